package colour

import "math"

// Lab is a colour in CIELAB under D65: L 0 to 100, A and B about -128 to 127.
type Lab struct{ L, A, B float64 }

// Distance is the colour difference CIEDE2000 of two colours. About 1 is just
// noticed side by side; 10 is plain at a glance.
func Distance(a, b string) float64 {
	ca, _ := Parse(a)
	cb, _ := Parse(b)
	return DeltaE(ca.Lab(), cb.Lab())
}

// Lab converts by way of XYZ (matrix of IEC 61966-2-1; CIE 15, white point D65).
func (c RGB) Lab() Lab {
	x := (0.4124564*c.R + 0.3575761*c.G + 0.1804375*c.B) * 100
	y := (0.2126729*c.R + 0.7151522*c.G + 0.0721750*c.B) * 100
	z := (0.0193339*c.R + 0.1191920*c.G + 0.9503041*c.B) * 100
	return labOfXYZ(x, y, z)
}

func labOfXYZ(x, y, z float64) Lab {
	f := func(t float64) float64 {
		if t > 216.0/24389 {
			return math.Cbrt(t)
		}
		return (24389.0/27*t + 16) / 116
	}
	fx, fy, fz := f(x/95.047), f(y/100), f(z/108.883)
	return Lab{116*fy - 16, 500 * (fx - fy), 200 * (fy - fz)}
}

// DeltaE is CIEDE2000 with all weights 1. Source: G. Sharma, W. Wu, E. N. Dalal, Color Research
// and Application 30 (2005) 21-30, equations 2 to 22.
func DeltaE(p, q Lab) float64 {
	mean7 := math.Pow((math.Hypot(p.A, p.B)+math.Hypot(q.A, q.B))/2, 7)
	g := 0.5 * (1 - math.Sqrt(mean7/(mean7+pow25to7)))
	a1, a2 := (1+g)*p.A, (1+g)*q.A
	c1, c2 := math.Hypot(a1, p.B), math.Hypot(a2, q.B)
	h1, h2 := hue(p.B, a1), hue(q.B, a2)

	dh := h2 - h1
	sum := h1 + h2
	switch {
	case c1*c2 == 0:
		dh = 0
	case math.Abs(dh) <= 180:
		sum /= 2
	case sum < 360:
		sum = (sum + 360) / 2
	default:
		sum = (sum - 360) / 2
	}
	if dh > 180 {
		dh -= 360
	} else if dh < -180 {
		dh += 360
	}
	dL, dC := q.L-p.L, c2-c1
	dH := 2 * math.Sqrt(c1*c2) * sin(dh/2)

	l, c, h := (p.L+q.L)/2, (c1+c2)/2, sum
	t := 1 - 0.17*cos(h-30) + 0.24*cos(2*h) + 0.32*cos(3*h+6) - 0.20*cos(4*h-63)
	sL := 1 + 0.015*(l-50)*(l-50)/math.Sqrt(20+(l-50)*(l-50))
	sC, sH := 1+0.045*c, 1+0.015*c*t
	c7 := math.Pow(c, 7)
	turn := 30 * math.Exp(-math.Pow((h-275)/25, 2))
	rT := -2 * math.Sqrt(c7/(c7+pow25to7)) * sin(2*turn)
	return math.Sqrt(math.Pow(dL/sL, 2) + math.Pow(dC/sC, 2) + math.Pow(dH/sH, 2) + rT*dC/sC*dH/sH)
}

const pow25to7 = 6103515625

// hue is the angle of (b, a) in degrees, 0 to 360; 0 for grey.
func hue(b, a float64) float64 {
	if a == 0 && b == 0 {
		return 0
	}
	h := math.Atan2(b, a) * 180 / math.Pi
	if h < 0 {
		h += 360
	}
	return h
}

func sin(degrees float64) float64 { return math.Sin(degrees * math.Pi / 180) }
func cos(degrees float64) float64 { return math.Cos(degrees * math.Pi / 180) }
