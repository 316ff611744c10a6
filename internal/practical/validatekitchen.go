package practical

import (
	"fmt"
	"slices"
)

// Count is how many of a kind of kit the kitchen has. Oven shelves are those of all ovens.
func (k Kitchen) Count(kit Kit) int {
	switch kit {
	case Ring:
		return k.Rings
	case OvenShelf:
		sum := 0
		for _, o := range k.Ovens {
			sum += o.Shelves
		}
		return sum
	case GrillPan:
		if k.Grill == NoGrill || k.Grill == "" {
			return 0
		}
		return 1
	case Processor:
		return k.Processors
	case Mixer:
		return k.Mixers
	case Microwave:
		return k.Microwaves
	case FridgeKit:
		return k.FridgeShelves
	case FreezerKit:
		return k.FreezerShelves
	default:
		return 0
	}
}

// field is the file's path of a kind of kit in the kitchen.
func (k Kit) field() string {
	return map[Kit]string{
		Ring: "kitchen.rings", OvenShelf: "kitchen.ovens", GrillPan: "kitchen.grill", Processor: "kitchen.processors", Mixer: "kitchen.mixers",
		Microwave: "kitchen.microwaves", FridgeKit: "kitchen.fridge-shelves", FreezerKit: "kitchen.freezer-shelves",
	}[k]
}

// kitchen judges the kitchen against itself.
func (j *judge) kitchen() {
	k := j.p.Kitchen
	names := map[string]bool{}
	for i, o := range k.Ovens {
		if names[o.Name] {
			j.faultf(fmt.Sprintf("kitchen.ovens[%d].name", i), "give each oven a name of its own, such as left and right", "two ovens are named %q", clip(o.Name))
		}
		names[o.Name] = true
	}
	if len(k.Ovens) > 4 {
		j.faultf("kitchen.ovens", "at most 4 for one cook or a pair", "there are %d ovens", len(k.Ovens))
	}
	if k.Grill == GrillInOven && len(k.Ovens) == 0 {
		j.fault("kitchen.grill", "the grill is in the oven, but there is no oven", "separate or none, or add an oven")
	}
	for i, t := range k.Taken {
		path := fmt.Sprintf("kitchen.taken[%d]", i)
		if t.Until <= t.From {
			j.faultf(path+".until", fmt.Sprintf("a time after %v", t.From), "it is taken from %v until %v", t.From, t.Until)
		}
		if has := k.Count(t.Kit); slices.Contains(kits(), t.Kit) && t.Number > has {
			j.faultf(path+".number", fmt.Sprintf("change %s, or take fewer", t.Kit.field()), "%s taken, but the kitchen has %s", number(t.Number, string(t.Kit)), number(has, string(t.Kit)))
		}
	}
	j.gasTable(k.GasTable)
}

// kits are all kinds of kit.
func kits() []Kit {
	return []Kit{Ring, OvenShelf, GrillPan, Processor, Mixer, Microwave, FridgeKit, FreezerKit}
}

// gasTable judges the room's own table: marks once each, hotter as they go.
func (j *judge) gasTable(table []GasMark) {
	for i, m := range table {
		path := fmt.Sprintf("kitchen.gas-table[%d]", i)
		for _, other := range table[:i] {
			if other.Mark == m.Mark {
				j.faultf(path+".mark", "keep it once", "gas mark %q stands here twice", clip(m.Mark))
			}
		}
		if i > 0 && m.Celsius <= table[i-1].Celsius {
			j.faultf(path+".celsius", "list the marks from cool to hot", "gas %s at %d °C is no hotter than gas %s at %d °C", clip(m.Mark), m.Celsius, clip(table[i-1].Mark), table[i-1].Celsius)
		}
		if m.Fan > m.Celsius {
			j.faultf(path+".fan", fmt.Sprintf("%d or a little more", m.Celsius-fanOffset), "a fan oven at %d °C is hotter than one without at %d °C", m.Fan, m.Celsius)
		}
	}
}
