package picture

import (
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"plait.example/internal/colour"
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
	"plait.example/internal/timeplan/timeplantest"
)

var look = flag.String("look", "", "a folder to write pictures to, for people to look at")

// TestLook writes the sample plans, and every plan (as JSON) that lies in the folder, in several widths, in grey, and as the three deficiencies see them.
func TestLook(t *testing.T) {
	if *look == "" {
		return
	}
	hex := regexp.MustCompile(`#[0-9A-F]{6}`)
	write := func(name string, b []byte) {
		if err := os.WriteFile(filepath.Join(*look, name+".svg"), b, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	p := timeplantest.Sample()
	page := Plait(p, Options{Width: 1000, Rows: true})
	write("page", page)
	write("plain", Plait(p, Options{Width: 620}))
	write("phone", Plait(p, Options{Width: 360}))
	write("print", Plait(p, Options{Width: 720, Rows: true, Print: true}))
	write("wall", Plait(p, Options{Width: 1600, Rows: true, Large: true}))
	write("grey", Plait(p, Options{Width: 1000, Rows: true, Grey: true}))
	write("pair", Plait(timeplantest.Pair(), Options{Width: 900, Rows: true}))
	write("over", Plait(timeplantest.TooMuch(), Options{Width: 900, Rows: true}))
	write("clash", Plait(clashing(), Options{Width: 900, Rows: true}))
	write("clash-phone", Plait(clashing(), Options{Width: 360}))
	write("supper", Plait(supper(), Options{Width: 900, Rows: true}))
	write("eight", Plait(eight(), Options{Width: 900, Rows: true}))
	write("eight-grey", Plait(eight(), Options{Width: 900, Grey: true}))
	plans, _ := filepath.Glob(filepath.Join(*look, "*.json"))
	for _, name := range plans {
		b, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		var p timeplan.Plan
		if err := json.Unmarshal(b, &p); err != nil {
			t.Fatal(err)
		}
		name = strings.TrimSuffix(filepath.Base(name), ".json")
		write(name, Plait(&p, Options{Width: 1000, Rows: true}))
		write(name+"-bare", Plait(&p, Options{Width: 520, Bare: true}))
	}
	for _, d := range colour.Deficiencies() {
		write(string(d), hex.ReplaceAllFunc(page, func(b []byte) []byte { return []byte(colour.See(string(b), d)) }))
	}
}

// eight is a plan of eight dishes, one strand each, so that every ink is seen.
func eight() *timeplan.Plan {
	p := &timeplan.Plan{Title: "Eight inks", Start: 600, Finish: 680, Allowed: 690, Hours: 24}
	places := []practical.Place{practical.AtFridge, practical.AtSide, practical.AtHob, practical.AtOven}
	for i := range 8 {
		letter := string(rune('A' + i))
		p.Dishes = append(p.Dishes, timeplan.Dish{Letter: letter, Name: "Dish " + letter})
		at := practical.TimeOfDay(600 + 4*i)
		p.Rows = append(p.Rows, timeplan.Row{ID: letter + "1", At: at, Clock: at, Minutes: 4, Dish: letter, Text: "Put dish " + letter + " away"})
		p.Waits = append(p.Waits, timeplan.Wait{Dish: letter, Place: places[i%4], From: at + 4, Until: 640 + practical.TimeOfDay(4*i)})
		p.Threads = append(p.Threads, timeplan.Thread{Dish: letter, From: i, To: 8 + i, Place: places[i%4], Wait: i})
	}
	for i := range 8 {
		letter := string(rune('A' + i))
		at := practical.TimeOfDay(640 + 4*i)
		p.Rows = append(p.Rows, timeplan.Row{ID: letter + "2", At: at, Clock: at, Minutes: 4, Dish: letter, Text: "Serve dish " + letter})
		p.Threads = append(p.Threads, timeplan.Thread{Dish: letter, From: 8 + i, To: -1, Place: practical.Served, Wait: -1})
	}
	return p
}
