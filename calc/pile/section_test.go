package pile_test

import (
	"math"
	"math/rand"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/basis"
	. "gaugewright/calc/pile"
	"gaugewright/calc/published"
	"gaugewright/calc/quantity"
)

func TestBendingOfTubesAgainstTables(t *testing.T) {
	for _, row := range table(t, "steel_tubes_bending.csv", 7) {
		s, err := Ring(row.mm(0), row.mm(1))
		require.NoError(t, err)
		name := " of tube " + row[0] + " x " + row[1]
		published.Check(t, hollow.At("tables of properties"), "W"+name+" [cm3]", row[2], float64(s.Modulus)*1e6, published.Printed)
		published.Check(t, hollow.At("tables of properties"), "i"+name+" [cm]", row[3], float64(s.Gyration())*100, published.Printed)
	}
}

// significant allows half a unit of the last of so many significant digits of x.
func significant(x float64, digits int) published.Tolerance {
	return published.Within(0.500001*math.Pow(10, math.Floor(math.Log10(x))-float64(digits-1)), "the table has "+strconv.Itoa(digits)+" significant digits")
}

// makers are tables of rolled H sections.
var makers = published.Source{Document: "Euronorm 53-62 and BS 4-1", Mark: basis.Memory}

func nameOfH(r row) string { return "H " + strings.Join(r[:4], " x ") }

// The tables count the fillets, H does not. A fillet of the radius r fills a
// corner beside a quarter circle: area (1 - pi/4) r^2, centroid at
// r (10 - 3 pi)/(12 - 3 pi) from the corner, second moment about its own
// centroid (1/3 - pi/16 - 1/(9 (4 - pi))) r^4.
func TestHAgainstTables(t *testing.T) {
	for _, row := range table(t, "h_sections.csv", 9) {
		p := Plates{Depth: row.mm(0), Width: row.mm(1), Web: row.mm(2), Flange: row.mm(3)}
		s, err := H(p)
		require.NoError(t, err)
		y, z := p.Moments()

		h, b, web, flange, r, digits := row.num(0)/10, row.num(1)/10, row.num(2)/10, row.num(3)/10, row.num(4)/10, int(row.num(5))
		a, own := (1-math.Pi/4)*r*r, (1.0/3-math.Pi/16-1/(9*(4-math.Pi)))*r*r*r*r
		from := r * (10 - 3*math.Pi) / (12 - 3*math.Pi)
		shift := func(d float64) float64 { return 4 * (own + a*d*d) }
		A := float64(s.Area)*1e4 + 4*a
		Iy := float64(y)*1e8 + shift(h/2-flange-from)
		Iz := float64(z)*1e8 + shift(web/2+from)
		for i, v := range []float64{A, Iy, Iy / (h / 2), Iz, Iz / (b / 2)} {
			what := []string{"A [cm2]", "I_y [cm4]", "W_y [cm3]", "I_z [cm4]", "W_z [cm3]"}[i] + ", fillets added"
			published.Check(t, makers.At(nameOfH(row)), what, row[6+i], v, significant(row.num(6+i), digits))
		}
		published.Check(t, makers.At(nameOfH(row)), "i_z [cm], fillets added", row[11], math.Sqrt(Iz/A), published.Printed)

		// What the comment of H says of the fillets, and that the least counts.
		assert.InDelta(t, 0.035, 4*a/A, 0.025, "fillets in A of %v", row)
		assert.InDelta(t, Iz, float64(s.Moment)*1e8, 0.002*Iz, "fillets in I_z of %v", row)
		assert.Equal(t, z, s.Moment)
		assert.InEpsilon(t, float64(z)/float64(p.Width/2), float64(s.Modulus), 1e-14)
	}
	// Makers' tables print 1.73 m2 of surface per metre for HE 300 B (from
	// memory); the four fillets save (8 - 2 pi) r.
	s, err := H(Plates{0.3, 0.3, 0.011, 0.019})
	require.NoError(t, err)
	published.Check(t, makers.At("H 300 x 300 x 11 x 19"), "surface [m2/m], fillets taken off", "1.73", float64(s.Surface)-(8-2*math.Pi)*0.027, published.Printed)
}

func TestHRulesAndLimits(t *testing.T) {
	rnd := rand.New(rand.NewSource(7))
	for range 200 {
		b, h := 0.1+rnd.Float64(), 0.1+rnd.Float64()
		p := Plates{quantity.Length(h), quantity.Length(b), quantity.Length(b * (0.02 + 0.9*rnd.Float64())), quantity.Length(h * (0.02 + 0.45*rnd.Float64()))}
		s, err := H(p)
		require.NoError(t, err)
		y, z := p.Moments()
		in := []float64{h, b, float64(p.Web), float64(p.Flange)}
		hold(t, HAreaRule, float64(s.Area), in...)
		hold(t, HMomentYRule, float64(y), in...)
		hold(t, HMomentZRule, float64(z), in...)
		hold(t, HMomentRule, float64(s.Moment), float64(y), float64(z))
		hold(t, HModulusRule, float64(s.Modulus), float64(y), h, float64(z), b)
		hold(t, HSurfaceRule, float64(s.Surface), h, b, float64(p.Web))

		// Derived another way, by three rectangles and their distances.
		flange, clear := b*in[3], h-2*in[3]
		arm := (h - in[3]) / 2
		assert.InEpsilon(t, 2*flange+clear*in[2], float64(s.Area), 1e-12)
		assert.InEpsilon(t, 2*(b*math.Pow(in[3], 3)/12+flange*arm*arm)+in[2]*math.Pow(clear, 3)/12, float64(y), 1e-11)
	}
	// A web as wide as the flanges is the full rectangle, and so are flanges
	// that meet.
	for _, p := range []Plates{{0.3, 0.3, 0.3, 0.02}, {0.3, 0.3, 0.01, 0.15}} {
		s, err := H(p)
		require.NoError(t, err)
		q, err := Square(0.3)
		require.NoError(t, err)
		assert.InEpsilon(t, float64(q.Area), float64(s.Area), 1e-12)
		assert.InEpsilon(t, float64(q.Moment), float64(s.Moment), 1e-12)
		assert.InEpsilon(t, float64(q.Modulus), float64(s.Modulus), 1e-12)
	}
	for code, p := range map[string]Plates{
		"pile.webTooThick": {0.3, 0.3, 0.31, 0.02}, "pile.flangeTooThick": {0.3, 0.3, 0.01, 0.151}, "pile.notPositive": {0.3, 0.3, 0, 0.02},
		"pile.notFinite": {quantity.Length(math.NaN()), 0.3, 0.01, 0.02},
	} {
		_, err := H(p)
		refused(t, code, err)
	}
}

func TestTaper(t *testing.T) {
	// By hand: 200 mm at the tip, 320 mm at the head of 12 m is 1 cm a metre.
	d, err := Taper(0.32, 0.20, 12, 4.5)
	require.NoError(t, err)
	published.Check(t, byHand, "taper of 200 to 320 mm over 12 m, at 4.5 m [m]", "0.245", float64(d), published.Within(1e-15, ""))
	hold(t, TaperRule, float64(d), 0.20, 0.32, 4.5, 12)
	for x, want := range map[quantity.Length]quantity.Length{0: 0.20, 12: 0.32} {
		d, err = Taper(0.32, 0.20, 12, x)
		require.NoError(t, err)
		assert.InDelta(t, float64(want), float64(d), 1e-15)
	}
	d, err = Taper(0.25, 0.25, 12, 5)
	require.NoError(t, err)
	assert.Equal(t, quantity.Length(0.25), d)
	_, err = Taper(0.32, 0.20, 12, 12.001)
	assert.Equal(t, 12.0, refused(t, "pile.above", err).Limit)
	_, err = Taper(0.32, 0.20, 12, -0.001)
	refused(t, "pile.below", err)
	_, err = Taper(0.32, 0, 12, 1)
	refused(t, "pile.notPositive", err)
}

func TestTabled(t *testing.T) {
	for _, row := range table(t, "h_sections.csv", 9) {
		A, i, b := row.num(6)/1e4, row.num(11)/100, row.num(1)/1000
		s, err := Tabled(quantity.Area(A), quantity.Length(i))
		require.NoError(t, err)
		three := published.Part(0.008, "A and i_z are printed to three or four digits")
		published.Check(t, makers.At(nameOfH(row)), "I_z [cm4], of the printed A and i_z", row[9], float64(s.Moment)*1e8, three)
		assert.Zero(t, s.Modulus)
		hold(t, TabledMomentRule, float64(s.Moment), A, i)
		w, err := ModulusOf(s, quantity.Length(b))
		require.NoError(t, err)
		published.Check(t, makers.At(nameOfH(row)), "W_z [cm3], of the printed A and i_z", row[10], float64(w)*1e6, three)
		hold(t, ModulusRule, float64(w), float64(s.Moment), b)
		assert.InEpsilon(t, i, float64(s.Gyration()), 1e-12)
	}
	s, err := Tabled(0.01491, 0.0758)
	require.NoError(t, err)
	_, err = ModulusOf(s, 0.15)
	refused(t, "pile.gyrationTooLarge", err)
	_, err = ModulusOf(s, 0)
	refused(t, "pile.notPositive", err)
	_, err = Tabled(0.01491, 0)
	refused(t, "pile.notPositive", err)
}

// By hand: a square of 0.3 m has W = b^3/6 = 0.0045 and i = b/sqrt(12).
func TestModuliByHand(t *testing.T) {
	s, err := Square(0.3)
	require.NoError(t, err)
	published.Check(t, byHand, "W of a square of 0.3 m [m3]", "0.0045", float64(s.Modulus), published.Within(1e-15, ""))
	assert.InDelta(t, 0.3/math.Sqrt(12), float64(s.Gyration()), 1e-15)
	c, err := Circle(0.3)
	require.NoError(t, err)
	assert.InDelta(t, math.Pi*0.027/32, float64(c.Modulus), 1e-15)
	published.Check(t, byHand, "i of a circle of 0.3 m [m]", "0.075", float64(c.Gyration()), published.Within(1e-15, ""))
}
