package colour

// Deficiency is a kind of colour blindness at its full severity.
type Deficiency string

// The deficiencies: no long-wave, no middle-wave, no short-wave cones.
const (
	Protan Deficiency = "protan"
	Deutan Deficiency = "deutan"
	Tritan Deficiency = "tritan"
)

// Deficiencies is all of them.
func Deficiencies() []Deficiency { return []Deficiency{Protan, Deutan, Tritan} }

// matrices at severity 1.0, on linear sRGB. Source: G. M. Machado, M. M. Oliveira, L. A. F.
// Fernandes, A physiologically-based model for simulation of color vision
// deficiency, IEEE TVCG 15 (2009), supplementary tables. The tritan matrix is the least certain part of the model.
var matrices = map[Deficiency][9]float64{
	Protan: {0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998},
	Deutan: {0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881},
	Tritan: {1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900},
}

// See is the colour as an eye with the deficiency sees it; unchanged for a
// deficiency that is not one of the three.
func See(hex string, d Deficiency) string {
	m, known := matrices[d]
	c, ok := Parse(hex)
	if !known || !ok {
		return hex
	}
	return c.through(m).Hex()
}

func (c RGB) through(m [9]float64) RGB {
	return RGB{
		m[0]*c.R + m[1]*c.G + m[2]*c.B,
		m[3]*c.R + m[4]*c.G + m[5]*c.B,
		m[6]*c.R + m[7]*c.G + m[8]*c.B,
	}
}
