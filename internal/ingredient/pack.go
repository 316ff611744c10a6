package ingredient

// packOf reads the container that stands after its size: "400 g can of beans", "400g/14oz tin beans",
// "2 x 400g/14oz tins tomatoes".
func (p *parser) packOf(m measure, i int) int {
	counted := m.each != nil && !m.hasUnit()
	k := p.sort(m)
	if k == length && i > m.to && p.at(i).is("piece", "pieces", "stick", "knob") {
		p.amounts[0].Unit += " " + singular(p.at(i).low)
		p.ts[i].label = unit
		return i + 1
	}
	if isUnit(p.at(i).low) != pack || p.isDone(i) || p.at(i+1).kind != word || p.at(i+1).is("roast", "barley", "choi") || !counted && k != weight && k != volume {
		return i
	}
	first := &p.amounts[0]
	switch {
	case counted:
		first.Unit, first.unitToken = singular(p.at(i).low), i
	case spoonful[UnitName(first.Unit)]:
		return i
	default:
		first.Pack = singular(p.at(i).low)
	}
	p.ts[i].label = unit
	if p.at(i+1).is("of") && !counted {
		p.mark(i, i+2, comment)
		return i + 2
	}
	return i + 1
}

// spoonful are measures that nothing is sold in.
var spoonful = words(`cup teaspoon tablespoon dessertspoon glass mug bowl spoon`)
