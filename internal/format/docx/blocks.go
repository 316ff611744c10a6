package docx

import (
	"cmp"
	"slices"

	"plait.example/internal/format/packed"
	"plait.example/internal/format/table"
)

// placed is a block and what it was read of: rows of a table, or a paragraph.
type placed struct {
	table.Block
	rows      []*packed.Element
	paragraph *packed.Element
}

// Tables is the document as lines and tables in their order. A table inside
// another becomes lines of its cell, unless the outer one is there to place it
// on the page; blank lines outside tables are left out. The error wraps
// table.ErrTooLarge.
func (d Document) Tables() ([]table.Block, error) {
	all, err := d.placed()
	blocks := make([]table.Block, len(all))
	for i, p := range all {
		blocks[i] = p.Block
	}
	return blocks, err
}

func (d Document) placed() ([]placed, error) {
	all, err := place(d.Blocks)
	return slices.DeleteFunc(all, func(p placed) bool { return p.Table == nil && len(p.Line) == 0 }), err
}

func place(blocks []Block) (list []placed, err error) {
	for _, b := range blocks {
		if b.Paragraph != nil {
			list = append(list, b.Paragraph.lines()...)
			continue
		}
		more, err := b.Table.place()
		if err != nil {
			return nil, err
		}
		list = append(list, more...)
	}
	return list, nil
}

// lines are a paragraph's lines; the first has its form.
func (p *Paragraph) lines() (list []placed) {
	var line table.Line
	for _, r := range p.Runs {
		line = line.Join(table.Piece{
			Text: r.Text, Ink: table.Ink(cmp.Or(r.Colour, p.ink)), Shade: cmp.Or(lit(r.Shade), lit(p.letters), table.Shade(p.Shade)),
			Bold: r.Bold, Italic: r.Italic, Struck: r.Struck,
		})
	}
	for i, l := range table.Lines(line) {
		b := table.Block{Line: l, Heading: p.Heading}
		if i == 0 && p.List != nil {
			b.Item = p.List.Marker
		}
		list = append(list, placed{Block: b, paragraph: p.source})
	}
	return list
}

// highlighters by their names (ECMA-376 part 1, 17.18.40).
var highlighters = map[string]string{
	"yellow": "FFFF00", "green": "00FF00", "cyan": "00FFFF", "magenta": "FF00FF", "blue": "0000FF", "red": "FF0000", "darkBlue": "000080",
	"darkCyan": "008080", "darkGreen": "008000", "darkMagenta": "800080", "darkRed": "800000", "darkYellow": "808000", "darkGray": "808080",
	"lightGray": "C0C0C0", "black": "000000",
}

// lit is a shade by its name or figures.
func lit(shade string) string { return cmp.Or(highlighters[shade], table.Shade(shade)) }

// place lays a table out, or takes it apart when it only places other things.
func (t *Table) place() ([]placed, error) {
	var g table.Grid
	var all []placed
	var inside []*table.Table
	one := placed{Block: table.Block{Table: &table.Table{Name: t.name}}}
	for i, r := range t.Rows {
		g.Row()
		if r.Header && one.Table.Header == i {
			one.Table.Header++
		}
		one.rows = append(one.rows, r.source)
		column := r.before
		for _, c := range r.Cells {
			in, err := place(c.Blocks)
			if err != nil {
				return nil, err
			}
			all = append(all, in...)
			cell := table.Cell{Shade: table.Shade(c.Shade), Span: c.Span, Down: c.Down, Clock: -1, Checked: c.ticked}
			flat := make([]table.Block, len(in))
			for k, b := range in {
				if flat[k] = b.Block; b.Table != nil {
					inside = append(inside, b.Table)
				}
			}
			if cell.Fill(table.Flat(flat)); c.Down > 0 {
				g.Put(column, cell)
			}
			column += c.Span
		}
	}
	rows, err := g.Rows()
	if one.Table.Rows = rows; err != nil {
		return nil, err
	}
	if one.Table.Frames(inside) {
		return slices.Clip(all), nil
	}
	return []placed{one}, nil
}
