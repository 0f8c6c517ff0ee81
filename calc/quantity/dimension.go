package quantity

// Dimension counts the exponents of length, mass and time. The zero value is
// the dimension of a plain ratio. Its coherent units are m, t and s.
type Dimension struct{ L, M, T int8 }

// The dimensions that the product's formulas use.
var (
	Dimensionless = Dimension{}
	Lengths       = Dimension{L: 1}
	Areas         = Dimension{L: 2}
	Volumes       = Dimension{L: 3}
	Masses        = Dimension{M: 1}
	Times         = Dimension{T: 1}
	Accelerations = Dimension{L: 1, T: -2}
	Forces        = Dimension{L: 1, M: 1, T: -2}
	Pressures     = Dimension{L: -1, M: 1, T: -2}
	Moments       = Dimension{L: 2, M: 1, T: -2}
	LineMasses    = Dimension{L: -1, M: 1}
	Densities     = Dimension{L: -3, M: 1}
)

// Times returns the dimension of a product.
func (d Dimension) Times(o Dimension) Dimension {
	return Dimension{d.L + o.L, d.M + o.M, d.T + o.T}
}

// Over returns the dimension of a quotient.
func (d Dimension) Over(o Dimension) Dimension {
	return Dimension{d.L - o.L, d.M - o.M, d.T - o.T}
}

// Power returns the dimension raised to a whole number.
func (d Dimension) Power(n int8) Dimension {
	return Dimension{d.L * n, d.M * n, d.T * n}
}

// Root returns the dimension of a square root, and whether it exists: every
// exponent must be even.
func (d Dimension) Root() (Dimension, bool) {
	if d.L%2 != 0 || d.M%2 != 0 || d.T%2 != 0 {
		return Dimension{}, false
	}
	return Dimension{d.L / 2, d.M / 2, d.T / 2}, true
}

// Coherent returns the symbol of the coherent unit of the dimension, such as
// "kN" or "kPa". A dimension without a name of its own gets a product of base
// units; a plain ratio gets the empty text.
func (d Dimension) Coherent() string {
	for _, n := range coherent {
		if n.dim == d {
			return n.symbol
		}
	}
	text := ""
	for _, part := range []struct {
		symbol string
		n      int8
	}{{"m", d.L}, {"t", d.M}, {"s", d.T}} {
		if part.n == 0 {
			continue
		}
		if text != "" {
			text += " "
		}
		text += part.symbol
		if part.n != 1 {
			if part.n < 0 {
				text += "-"
			}
			text += string(rune('0' + abs8(part.n)))
		}
	}
	return text
}

func abs8(n int8) int8 {
	if n < 0 {
		return -n
	}
	return n
}

var coherent = []struct {
	dim    Dimension
	symbol string
}{
	{Dimensionless, ""}, {Lengths, "m"}, {Areas, "m2"}, {Volumes, "m3"}, {Masses, "t"}, {Times, "s"},
	{Forces, "kN"}, {Pressures, "kPa"}, {Accelerations, "m/s2"}, {Moments, "kNm"}, {LineMasses, "t/m"},
	{Densities, "t/m3"},
}
