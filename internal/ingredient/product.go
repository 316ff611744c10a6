package ingredient

import "strings"

// Product is the food as a list for shopping has it, and beside it what else the line says of it.
// The name is Name, with the words before it that tell which product it is: what comes in a tin is
// bought chopped, and a recipe that asks for cold water means it so. The note is the words of
// preparation and comment in the order of the line, without the little words that hold a line
// together ("of", "a").
func (l Line) Product() (name, note string) {
	from, to := l.productWords()
	name = l.Name
	if to > from {
		name = l.text[l.tokens[from].from:l.tokens[to-1].to] + " " + name
	}
	return name, l.noteWithout(from, to)
}

// productWords gives the words of preparation, as tokens, that stand right before the name and
// belong to it; none when from is to.
func (l Line) productWords() (from, to int) {
	for to < len(l.tokens) && l.tokens[to].label != name {
		to++
	}
	from = to
	for from > 0 && l.tokens[from-1].label == preparation {
		from--
	}
	a := l.First()
	tinned := sold[a.Unit] || sold[a.Pack]
	watery := strings.EqualFold(l.Name, "water") && to-from == 1
	if to == len(l.tokens) || !tinned && !watery {
		return 0, 0
	}
	return from, to
}

// sold are the packs whose food has been worked on before it is bought.
var sold = words(`tin can jar carton packet package pack bag pouch sachet tub box`)

// noteWithout joins the runs of words of preparation and comment, less the tokens from one to another.
func (l Line) noteWithout(from, to int) string {
	p := &parser{ts: l.tokens, text: l.text}
	said := func(i int) bool {
		t := l.tokens[i]
		return (t.label == preparation || t.label == comment) && (i < from || i >= to)
	}
	var runs []string
	for i := 0; i < len(l.tokens); i++ {
		if !said(i) {
			continue
		}
		j := i
		for k := i; k < len(l.tokens) && (said(k) || l.tokens[k].label == none && l.tokens[k].kind == sign); k++ {
			if said(k) {
				j = k
			}
		}
		if run := p.trimmed(i, j, l.First().Pack); run != "" {
			runs = append(runs, run)
		}
		i = j
	}
	return strings.Join(runs, ", ")
}

// little are words that hold a line together and say nothing at the end of a run.
var little = words(`of a an the about`)

// trimmed is the run of tokens without little words at its ends, and without the brackets around all of it.
func (p *parser) trimmed(i, j int, pack string) string {
	if pack != "" && singular(p.at(i).low) == pack {
		i++ // "400 g can of beans"
	}
	for i <= j && (little[p.at(i).low] || p.at(i).kind == sign && !p.at(i).is("(", "+", "&")) {
		i++
	}
	for j >= i && (little[p.at(j).low] || p.at(j).kind == sign && !p.at(j).is(")")) {
		j--
	}
	if i > j {
		return ""
	}
	s := strings.TrimRight(p.run(i, j), " .,;:")
	if inner, whole := strings.CutPrefix(s, "("); whole && strings.HasSuffix(s, ")") && !strings.ContainsAny(inner[:len(inner)-1], "()") {
		return inner[:len(inner)-1]
	}
	return s
}

// StandsAlone says whether the line reads as an ingredient of its own and not as the rest of another:
// "2-3 tbsp cold water" and "1 leek" do, "2 inches long" and "6 of them chopped" do not. It begins
// with an amount that is no length, and names a food: any after a weight, a volume or a spoon, one of
// the tables after a count.
func (l Line) StandsAlone() bool {
	a := l.First()
	if len(l.Amounts) == 0 || a.token != 0 || l.rescued || l.Name == "" || isUnit(a.Unit) == length || strings.HasPrefix(a.Unit, "inch") || strings.HasPrefix(a.Unit, "cm") {
		return false
	}
	for _, t := range l.tokens[1:] {
		if t.label == name {
			break
		}
		if t.label == preparation && a.Unit == "" || t.label == comment && !t.is("of") {
			return false
		}
	}
	if words := strings.Fields(strings.ToLower(l.Name)); standing[words[len(words)-1]] {
		return false
	}
	if k := isUnit(a.Unit); k == weight || k == volume || a.Pack != "" {
		return true
	}
	f, _ := foods().find(l.Name)
	return f != nil
}

// standing are last words of what only tells of a food: "1/2 inch thick", "1 pound each".
var standing = words(`thick thin long wide high deep each total apart piece pieces half halves quarters slices more extra times minutes`)
