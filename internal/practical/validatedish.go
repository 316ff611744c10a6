package practical

import (
	"fmt"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

var (
	letterForm = regexp.MustCompile(`^[A-Z]$`)
	idForm     = regexp.MustCompile(`^[A-Za-z0-9][A-Za-z0-9._-]{0,31}$`)
)

// dishes judges each dish and each of its steps.
func (j *judge) dishes() {
	letters, ids := map[string]string{}, map[string]string{}
	for i, d := range j.p.Dishes {
		path := fmt.Sprintf("dishes[%d]", i)
		if d.Letter != "" && !letterForm.MatchString(d.Letter) {
			j.faultf(path+".letter", "one capital letter, A to Z", "%q is not a letter", clip(d.Letter))
		}
		if first, twice := letters[d.Letter]; twice && d.Letter != "" {
			j.faultf(path+".letter", "give each dish a letter of its own", "letter %s is that of %s already", clip(d.Letter), first)
		} else {
			letters[d.Letter] = "the dish " + quoted(d.Name)
		}
		if strings.TrimSpace(d.Name) == "" && d.Recipe == "" {
			j.fault(path+".name", "nothing is written here", "name the dish")
		}
		if d.Recipe != "" && !filepath.IsLocal(filepath.FromSlash(d.Recipe)) {
			j.faultf(path+".recipe", "a file in the practical file's own folder or below it, such as recipes/scones.txt", "%q lies outside the practical file's folder", clip(d.Recipe))
		}
		for k, s := range d.Steps {
			at := fmt.Sprintf("%s.steps[%d]", path, k)
			j.id(at+".id", s.ID, d.Name, ids)
			j.step(at, s)
		}
	}
}

func (j *judge) id(path, id, dish string, ids map[string]string) {
	switch first, twice := ids[id]; {
	case id == "":
	case !idForm.MatchString(id):
		j.faultf(path, "letters, digits, dot and dash, such as A3", "%q is not an id", clip(id))
	case twice:
		j.faultf(path, "give each step of the practical an id of its own", "id %s is that of a step of %s already", id, first)
	default:
		ids[id] = quoted(dish)
	}
}

func quoted(name string) string { return fmt.Sprintf("%q", clip(name)) }

// step judges one step by itself and against the kitchen and the clock.
func (j *judge) step(path string, s Step) {
	h := s.Hands
	if h.Low > h.Likely || h.Likely > h.High {
		j.faultf(path+".hands", "low at most likely, likely at most high", "the minutes do not rise: low %d, likely %d, high %d", h.Low, h.Likely, h.High)
	}
	if h.High == 0 && s.Wait == nil {
		j.fault(path+".hands", "the step takes no time: neither hands nor a wait", "give the minutes of hands, such as 5, or a wait")
	}
	for i, kit := range s.Uses {
		at := fmt.Sprintf("%s.uses[%d]", path, i)
		want := 1
		for _, before := range s.Uses[:i] {
			if before == kit {
				want++
			}
		}
		if has := j.p.Kitchen.Count(kit); slices.Contains(kits(), kit) && has < want {
			j.faultf(at, fmt.Sprintf("change %s, or do it another way", kit.field()), "the step uses %s, but the kitchen has %s", number(want, string(kit)), number(has, string(kit)))
		}
	}
	if s.Wait != nil {
		j.wait(path+".wait", *s.Wait)
		j.twoTemperatures(path, s)
	}
	if s.SetUp {
		j.setUp(path, s)
	}
	j.length(path, s)
}

// number says how many of a thing, as "no ring", "1 ring", "2 × ring".
func number(n int, thing string) string {
	switch n {
	case 0:
		return "no " + thing
	case 1:
		return "1 " + thing
	default:
		return fmt.Sprintf("%d × %s", n, thing)
	}
}

// length says whether the step alone is longer than the whole practical.
func (j *judge) length(path string, s Step) {
	has := int(j.p.Allowed() - j.p.Clock.Start)
	if has <= 0 {
		return // the clock is at fault
	}
	stage := "the clock has"
	if s.SetUp && j.p.Clock.SetUp <= j.p.Clock.Start {
		has, stage = int(j.p.Clock.Start-j.p.SetUpFrom()), "set-up has"
	}
	takes := s.Hands.Low
	if s.Wait != nil {
		takes += or(s.Wait.PutIn, 1) + s.Wait.Least + or(s.Wait.TakeOut, 1)
	}
	if takes > has {
		j.faultf(path, "a shorter step or a longer practical", "the step takes at least %d minutes, and %s %d", takes, stage, has)
	}
}

var (
	celsiusForm = regexp.MustCompile(`(?i)\b(\d{3})\s*(?:°|º|degrees?)?\s*C\b`)
	fanBefore   = regexp.MustCompile(`(?i)fan(?: oven)?[:\s]*$`)
	fanAfter    = regexp.MustCompile(`(?i)^\s*\(?\s*fan\b\s*[^\d\s]`)
	notAnOven   = regexp.MustCompile(`(?i)\b(core|probe|inside|oil|syrup|sugar)\b`)
)

// twoTemperatures says when the words of a step that waits in the oven name two
// temperatures: a wait has one. Fan figures and core temperatures do not count.
func (j *judge) twoTemperatures(path string, s Step) {
	if s.Wait.Place != AtOven || notAnOven.MatchString(s.Text) {
		return
	}
	var found []string
	for _, m := range celsiusForm.FindAllStringSubmatchIndex(s.Text, -1) {
		figure := s.Text[m[2]:m[3]]
		if !fanBefore.MatchString(s.Text[:m[0]]) && !fanAfter.MatchString(s.Text[m[1]:]+" .") && !slices.Contains(found, figure) {
			found = append(found, figure)
		}
	}
	if len(found) > 1 {
		j.faultf(path+".text", "make a step for each temperature, so that each has its minutes", "the words ask the oven for %s °C in one wait", strings.Join(found, " °C and "))
	}
}
