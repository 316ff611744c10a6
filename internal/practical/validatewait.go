package practical

import (
	"fmt"
	"reflect"
	"slices"
)

// hottest and coolest are what an oven can be asked for, in degrees Celsius without fan.
const coolest, hottest = 50, 300

// wait judges a wait by itself and against the kitchen.
func (j *judge) wait(path string, w Wait) {
	if w.Most > 0 && w.Least > w.Most {
		j.faultf(path+".most", fmt.Sprintf("%d or more, or 0 for no most", w.Least), "the least of %d minutes is more than the most of %d", w.Least, w.Most)
	}
	j.attention(path, w)
	switch {
	case w.Place == AtHands || w.Place == Served:
		j.faultf(path+".place", "where the food stands meanwhile, such as side, fridge, hob or oven", "food does not wait at %q", w.Place)
	case slices.Contains(words[reflect.TypeFor[Place]()], string(w.Place)):
		j.heat(path, w)
		j.room(path, w)
	}
}

func (j *judge) attention(path string, w Wait) {
	switch {
	case w.Attention == Look && w.Every == 0:
		j.fault(path+".every", "the wait needs a look, but not how often", "give the minutes between two looks, such as 10")
	case w.Attention != Look && w.Every > 0:
		j.faultf(path+".every", "attention: look, or leave every out", "a look every %d minutes is for a wait that needs a look", w.Every)
	}
}

// heat judges what is asked of an oven; other places take no temperature.
func (j *judge) heat(path string, w Wait) {
	if w.Place != AtOven {
		if w.Celsius != 0 {
			j.faultf(path+".celsius", "leave it out, and say it in the step's words or check", "a temperature is set at an oven, and this wait is at %q", w.Place)
		}
		if w.Band != 0 {
			j.faultf(path+".band", "leave it out", "a band of temperatures is an oven's, and this wait is at %q", w.Place)
		}
		if w.DoorShut != 0 {
			j.faultf(path+".door-shut", "leave it out", "the door that stays shut is an oven's, and this wait is at %q", w.Place)
		}
		return
	}
	switch {
	case w.Celsius == 0:
		j.fault(path+".celsius", "the wait in the oven has no temperature", "give degrees Celsius of an oven without fan, such as 180")
	case w.Celsius < coolest || w.Celsius > hottest:
		j.faultf(path+".celsius", fmt.Sprintf("%d to %d °C, of an oven without fan", coolest, hottest), "%d °C is out of range", w.Celsius)
	}
	if w.DoorShut > w.Least {
		j.faultf(path+".door-shut", fmt.Sprintf("%d or less", w.Least), "the door stays shut for %d minutes, longer than the wait's least of %d", w.DoorShut, w.Least)
	}
}

// room says whether the kitchen has the place, and shelves enough in it.
func (j *judge) room(path string, w Wait) {
	k := j.p.Kitchen
	kit, ok := map[Place]Kit{AtHob: Ring, AtOven: OvenShelf, AtGrill: GrillPan, AtMicrowave: Microwave, AtFridge: FridgeKit, AtFreezer: FreezerKit}[w.Place]
	if !ok {
		if w.Shelves > 0 {
			j.faultf(path+".shelves", "leave it out", "shelves are of oven, fridge and freezer, and this wait is at %q", w.Place)
		}
		return
	}
	if k.Count(kit) == 0 {
		missing := map[Kit]string{Ring: "rings", OvenShelf: "oven", GrillPan: "grill", Microwave: "microwave", FridgeKit: "fridge shelf", FreezerKit: "freezer shelf"}[kit]
		j.faultf(path+".place", fmt.Sprintf("change %s, or let the food wait elsewhere", kit.field()), "the kitchen has no %s", missing)
		return
	}
	has, of := k.Count(kit), string(w.Place)
	if w.Place == AtOven { // one load goes into one oven
		has, of = 0, "largest oven"
		for _, o := range k.Ovens {
			has = max(has, o.Shelves)
		}
	}
	if (w.Place == AtOven || w.Place == AtFridge || w.Place == AtFreezer) && w.Shelves > has {
		j.faultf(path+".shelves", fmt.Sprintf("%d or fewer", has), "the wait takes %d shelves, and the %s has %d", w.Shelves, of, has)
	}
}
