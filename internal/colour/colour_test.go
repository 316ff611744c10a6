package colour

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/lucasb-eyer/go-colorful"
)

// rows reads a table of testdata (README.md there names the sources) as maps by column.
func rows(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil || len(all) < 2 {
		t.Fatalf("%s: %v, %d lines", name, err, len(all))
	}
	var out []map[string]string
	for _, line := range all[1:] {
		row := map[string]string{}
		for i, key := range all[0] {
			row[key] = line[i]
		}
		out = append(out, row)
	}
	return out
}

func number(t *testing.T, row map[string]string, key string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(row[key], 64)
	if err != nil {
		t.Fatalf("%s of %v: %v", key, row, err)
	}
	return v
}

// The formula of WCAG 2.2 on pairs at the edges of 3, 4.5 and 7.
func TestContrast(t *testing.T) {
	for _, r := range rows(t, "wcag_contrast.csv") {
		a, b := r["foreground"], r["background"]
		got, want := Contrast(a, b), number(t, r, "ratio")
		if math.Abs(got-want) > 0.0001 || Contrast(b, a) != got {
			t.Errorf("Contrast(%s, %s) = %.4f, want %.4f both ways", a, b, got, want)
		}
		if (got >= 4.5) != (r["aa_text"] == "yes") || (got >= 3) != (r["aa_large_text_or_graphics"] == "yes") {
			t.Errorf("Contrast(%s, %s) = %.4f is on the wrong side of a level", a, b, got)
		}
		c, _ := Parse(a)
		if l := number(t, r, "luminance_foreground"); math.Abs(c.Luminance()-l) > 1e-5 {
			t.Errorf("Luminance(%s) = %f, want %f", a, c.Luminance(), l)
		}
	}
}

// All 34 published pairs of Sharma, Wu and Dalal (2005), to their four decimals.
func TestDeltaEPublishedPairs(t *testing.T) {
	pairs := rows(t, "ciede2000_pairs.csv")
	if len(pairs) != 34 {
		t.Fatalf("%d pairs, want 34", len(pairs))
	}
	for _, r := range pairs {
		p := Lab{number(t, r, "L1"), number(t, r, "a1"), number(t, r, "b1")}
		q := Lab{number(t, r, "L2"), number(t, r, "a2"), number(t, r, "b2")}
		want := number(t, r, "delta_e00")
		if got := DeltaE(p, q); math.Abs(got-want) > 0.00005 || math.Abs(got-DeltaE(q, p)) > 1e-9 {
			t.Errorf("pair %s: DeltaE = %.5f and %.5f back, want %.4f", r["pair"], got, DeltaE(q, p), want)
		}
	}
}

func TestSeeUsesPublishedMatrices(t *testing.T) {
	seen := 0
	for _, r := range rows(t, "machado2009.csv") {
		if r["severity"] != "1.0" {
			continue
		}
		seen++
		m := matrices[Deficiency(r["kind"])]
		for i, key := range []string{"rr", "rg", "rb", "gr", "gg", "gb", "br", "bg", "bb"} {
			if m[i] != number(t, r, key) {
				t.Errorf("%s %s = %f, want %s", r["kind"], key, m[i], r[key])
			}
		}
	}
	if seen != 3 {
		t.Errorf("%d matrices of severity 1.0, want 3", seen)
	}
}

func TestSee(t *testing.T) {
	for _, d := range Deficiencies() {
		if See("#FFFFFF", d) != "#FFFFFF" || See("#000000", d) != "#000000" {
			t.Errorf("%s changes white or black", d)
		}
	}
	// 0.367322 + 0.280085... of a pure red: linear 0.367322 is sRGB 0.6406 = 163; 0.280085 is 0.5663 = 144.
	if got := See("#FF0000", Deutan); got != "#A39000" {
		t.Errorf("red seen by deutan = %s, want #A39000", got)
	}
	if got := See("#123456", "none"); got != "#123456" {
		t.Errorf("unknown deficiency changes %s", got)
	}
}

func TestConversions(t *testing.T) {
	for _, r := range rows(t, "conversions.csv") {
		in := [3]float64{number(t, r, "in1"), number(t, r, "in2"), number(t, r, "in3")}
		out := [3]float64{number(t, r, "out1"), number(t, r, "out2"), number(t, r, "out3")}
		var got [3]float64
		switch r["from"] {
		case "srgb":
			got = [3]float64{linear(in[0]), linear(in[1]), linear(in[2])}
		case "xyz d65":
			l := labOfXYZ(in[0], in[1], in[2])
			got = [3]float64{l.L, l.A, l.B}
		default:
			t.Fatalf("unknown conversion %q", r["from"])
		}
		for i := range got {
			if math.Abs(got[i]-out[i]) > 1e-3 {
				t.Errorf("%s %v: got %v, want %v", r["from"], in, got, out)
				break
			}
		}
	}
}

// go-colorful is an independent implementation of the whole way from sRGB.
func TestDistanceAgreesWithAnother(t *testing.T) {
	for i := range 200 {
		a := fmt.Sprintf("#%06X", i*83_777%0x1000000)
		b := fmt.Sprintf("#%06X", i*5_555_557%0x1000000)
		ca, _ := colorful.Hex(a)
		cb, _ := colorful.Hex(b)
		if got, want := Distance(a, b), 100*ca.DistanceCIEDE2000(cb); math.Abs(got-want) > 0.05 {
			t.Errorf("Distance(%s, %s) = %.3f, go-colorful %.3f", a, b, got, want)
		}
	}
}

func TestParse(t *testing.T) {
	for _, bad := range []string{"", "#", "#12345", "123456", "#GG0000", "#1234567", "red", "#+12345"} {
		if _, ok := Parse(bad); ok {
			t.Errorf("Parse(%q) accepts it", bad)
		}
	}
	for v := range 256 {
		hex := fmt.Sprintf("#%02X%02X%02X", v, 255-v, v/2)
		if c, ok := Parse(hex); !ok || c.Hex() != hex {
			t.Errorf("Parse(%s).Hex() = %s", hex, c.Hex())
		}
	}
	if got := Grey("#FFFFFF"); got != "#FFFFFF" {
		t.Errorf("Grey(white) = %s", got)
	}
}
