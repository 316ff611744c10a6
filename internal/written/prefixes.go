package written

import (
	"regexp"
	"slices"
	"strings"
)

// learnPrefixes takes short words before a colon at the head of several rows for
// dishes, when the document names none.
func (r *reader) learnPrefixes() {
	if len(r.names) > 0 {
		return
	}
	times, order := map[string]int{}, []string(nil)
	for _, e := range r.entries {
		for line := range strings.SplitSeq(e.text(), "\n") {
			head, _, cut := cutHead(strings.TrimLeft(line, " \t\u00A0•*·▪◦●-–—"))
			if !cut || len(e.dishes) > 0 || len(strings.Fields(head)) > 5 || noDish.MatchString(head) {
				continue
			}
			if times[head]++; times[head] == 2 {
				order = append(order, head)
			}
		}
	}
	if len(order) == 0 || len(order) == 1 && 4*times[order[0]] < len(r.entries) {
		return
	}
	for _, name := range order {
		r.names = append(r.names, Named{Name: name})
		r.plan.Dishes = append(r.plan.Dishes, Named{Name: name})
	}
}

// noDish are words before a colon that are no dish.
var noDish = regexp.MustCompile(`(?i)^(?:note|nb|all|safety|hygiene|quality|check|remember|step|stage|wash|clean|oven|timer|set|serve|critical|special|contingency|if)\b|\d`)

// prefix is the dish that a row's words begin with: "Quiche: rub in", "(Q) rub in".
func (r *reader) prefix(text string) []string {
	if said := r.bracketed(text); said != nil {
		return said
	}
	var said []string
	for line := range strings.SplitSeq(text, "\n") {
		alone := len(line) < len(text) && len(line) > 2 && strings.HasPrefix(text, line)
		line = strings.TrimLeft(line, " \t\u00A0•*·▪◦●-–—")
		n, ok := r.signed(line)
		if head, _, cut := cutHead(line); !ok && cut {
			n, ok = r.find(head)
		}
		if m := endLetter.FindStringSubmatch(line); !ok && m != nil {
			n, ok = r.find(m[1])
		}
		if !ok && alone { // the dish's name over what is done
			n, ok = r.find(strings.Trim(line, " .:"))
		}
		if ok && !slices.Contains(said, n) {
			said = append(said, n)
		}
	}
	return said
}

// signed is the dish whose sign, such as a coloured dot, stands in a text.
func (r *reader) signed(text string) (string, bool) {
	for _, n := range r.names {
		if isSign(n.Letter) && strings.Contains(text, n.Letter) {
			return n.Name, true
		}
	}
	return "", false
}

// cutHead parts short words at the head of a text from the rest at the first colon or dash.
func cutHead(text string) (head, rest string, cut bool) {
	at := headSign.FindStringIndex(text)
	if at == nil {
		return "", text, false
	}
	head, rest = strings.TrimSpace(text[:at[0]]), strings.TrimSpace(text[at[1]:])
	return head, rest, head != "" && rest != "" && len(head) <= 40 && !strings.Contains(head, "\n")
}

var headSign = regexp.MustCompile(`\s*:\s|\s+[-–—]\s+|:$`)

// bracketed is the dishes that stand in brackets at the head of a text or, in
// square ones, anywhere in it: "(blue) roll out", "roll out [Q]".
func (r *reader) bracketed(text string) (said []string) {
	for _, m := range inBrackets.FindAllStringSubmatchIndex(text, -1) {
		if strings.TrimSpace(text[:m[0]]) != "" && text[m[0]] == '(' && strings.TrimSpace(text[m[1]:]) != "" {
			continue
		}
		word := text[m[2]:m[3]]
		if n, ok := r.find(word); ok && (len(word) > 1 || word >= "A" && word <= "Z") && !slices.Contains(said, n) {
			said = append(said, n)
		}
	}
	return said
}

// endLetter is a dish's letter or number after a dash at the end of a line.
var endLetter = regexp.MustCompile(`\s[-–—|/]\s*([A-Z]{1,2})\.?$`)

var inBrackets = regexp.MustCompile(`[(\[]([^)\]]{1,40})[)\]]`)
