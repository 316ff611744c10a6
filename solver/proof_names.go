package solver

import (
	"fmt"
	"strconv"
	"strings"

	"plait.example/solver/internal/lcg"
	"plait.example/solver/problem"
)

// names say what the engine's variables mean in terms of the problem: each is
// a function of the schedule, so that whoever reads a proof can tell from any
// schedule which literals hold. Every method works without names, and does
// nothing then.
type names struct {
	of    map[lcg.Var]naming
	lines []string
}

// naming is a name, and whether the variable is said as true or false.
type naming struct {
	text  string
	truth bool
}

// give notes a name, once a variable.
func (n *names) give(v lcg.Var, text string, truth bool, meaning string) {
	if n.of == nil {
		n.of = map[lcg.Var]naming{}
	}
	if _, named := n.of[v]; named || v == 0 {
		return
	}
	n.of[v] = naming{text, truth}
	n.lines = append(n.lines, "let "+text+" "+meaning)
}

// name notes a variable that means what kind and numbers say.
func (m *model) name(v lcg.Var, kind string, numbers ...int) {
	if m.names == nil {
		return
	}
	meaning := kind
	for _, k := range numbers {
		meaning += " " + strconv.Itoa(k)
	}
	truth := false
	text := fmt.Sprintf("x%d", v)
	switch kind {
	case "start":
		text = fmt.Sprintf("s%d", numbers[0])
	case "end":
		text = fmt.Sprintf("e%d", numbers[0])
	case "makespan":
		text = "last"
	case "goal":
		text = fmt.Sprintf("g%d", numbers[0])
	case "switches":
		text = fmt.Sprintf("n%d", numbers[0])
	case "place", "change", "worked", "turn":
	default:
		truth, text = true, fmt.Sprintf("b%d", v)
	}
	m.names.give(v, text, truth, meaning)
}

// nameActivity notes start, end and modes of activity i.
func (m *model) nameActivity(i int) {
	if m.names == nil {
		return
	}
	m.name(m.start[i].Var, "start", i)
	if m.end[i].Var != m.start[i].Var {
		m.name(m.end[i].Var, "end", i)
	}
	for k, l := range m.mode[i] {
		if l == lcg.Is(l.Var()) {
			m.name(l.Var(), "mode", i, k)
		}
	}
}

// nameLevels notes the levels of a need.
func (m *model) nameLevels(n *need) {
	if m.names == nil {
		return
	}
	usual := -1
	for l, lit := range n.level {
		if lit == lcg.True.Not() {
			continue
		}
		if usual < 0 {
			usual = l
		}
		if lit == lcg.Is(lit.Var()) {
			m.name(lit.Var(), "level", n.activity, n.state, l, usual)
		}
	}
}

// nameBlock notes the position and change of a need; most is the last
// position that is told apart.
func (m *model) nameBlock(n *need, most int) {
	m.name(n.place.Var, "place", n.activity, n.state, most)
	m.name(n.change.Var, "change", n.activity, n.state, m.e.Low(n.change.Var))
}

// namePair notes how the blocks of two needs stand.
func (m *model) namePair(l lcg.Lit, kind string, x, y *need) {
	m.name(l.Var(), kind, x.activity, y.activity, x.state)
}

// nameAll notes a literal that holds if and only if all of lits do.
func (m *model) nameAll(l lcg.Lit, lits []lcg.Lit) {
	if m.names != nil {
		m.names.give(l.Var(), fmt.Sprintf("b%d", l.Var()), true, strings.TrimSpace("all "+m.names.clause(lits)))
	}
}

// nameLag notes a literal that holds if and only if a lag does.
func (m *model) nameLag(l lcg.Lit, lag problem.Lag) {
	if m.names != nil {
		m.nameApart(l, m.point(lag.From), m.point(lag.To), max(-m.p.Horizon, min(lag.Min, m.p.Horizon+1)))
	}
}

// nameSpan notes how much longer than its least a span is.
func (m *model) nameSpan(v lcg.Var, f flow) {
	if m.names != nil {
		m.names.give(v, fmt.Sprintf("d%d", v), false, fmt.Sprintf("span %s %s %d", m.names.of[f.from.v].text, m.names.of[f.to.v].text, f.least))
	}
}

// nameSum notes which spans make up the objective that is being posted.
func (m *model) nameSum(parts []lcg.Part) {
	if m.names == nil {
		return
	}
	line := fmt.Sprintf("sum %d", len(m.goal))
	for _, p := range parts {
		if text := m.names.of[p.Var].text; strings.HasPrefix(text, "d") {
			line += fmt.Sprintf(" %d %s", p.Weight, text)
		}
	}
	m.names.lines = append(m.names.lines, line)
}

// nameOrder notes a literal that holds if and only if a ends before b starts.
func (m *model) nameOrder(l lcg.Lit, a, b *task) {
	if m.names != nil {
		m.nameApart(l, a.End, b.Start, 0)
	}
}

func (m *model) nameApart(l lcg.Lit, from, to lcg.Term, least int) {
	meaning := fmt.Sprintf("lag %s %s %d", m.names.term(from), m.names.term(to), least)
	m.names.give(l.Var(), fmt.Sprintf("b%d", l.Var()), true, meaning)
}

// term writes a term: a name with a number added, or a number.
func (n *names) term(t lcg.Term) string {
	if t.Var == 0 {
		return strconv.Itoa(int(t.Add) + 1)
	}
	if t.Add == 0 {
		return n.of[t.Var].text
	}
	return fmt.Sprintf("%s%+d", n.of[t.Var].text, t.Add)
}

// literal writes a literal: s3>=7, s3<=6, b9 or !b9.
func (n *names) literal(l lcg.Lit) string {
	v := n.of[l.Var()]
	name := v.text
	if name == "" {
		name = fmt.Sprintf("?%d", l.Var())
	}
	switch {
	case v.truth && l == lcg.Is(l.Var()):
		return name
	case v.truth && l == lcg.Is(l.Var()).Not():
		return "!" + name
	case l.Side&1 == 0:
		return fmt.Sprintf("%s>=%d", name, l.Min)
	}
	return fmt.Sprintf("%s<=%d", name, -l.Min)
}

func (n *names) clause(lits []lcg.Lit) string {
	words := make([]string, len(lits))
	for i, l := range lits {
		words[i] = n.literal(l)
	}
	return strings.Join(words, " ")
}
