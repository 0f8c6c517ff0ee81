package pile_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	. "gaugewright/calc/pile"
	"gaugewright/calc/published"
	"gaugewright/calc/quantity"
)

func TestLoadsOfASection(t *testing.T) {
	// By hand: 0.3 m square, 0.09 m2 x 28 MPa = 2520 kN; with e = 30 mm the
	// edge stress is F (1 + 6 e/b)/A, so 2520/1.6 = 1575 kN; with e = b/6 half.
	s, err := Square(0.3)
	require.NoError(t, err)
	n, err := SectionLimit(s.Area, 28000)
	require.NoError(t, err)
	published.Check(t, byHand, "28 MPa on a square of 0.3 m [kN]", "2520", float64(n), published.Within(1e-9, ""))
	hold(t, SectionLimitRule, float64(n), float64(s.Area), 28000)
	f, err := OffAxisLimit(28000, s.Area, 0.03, s.Modulus)
	require.NoError(t, err)
	published.Check(t, byHand, "the same, 30 mm off the axis [kN]", "1575", float64(f), published.Within(1e-9, ""))
	f, err = OffAxisLimit(28000, s.Area, 0.05, s.Modulus)
	require.NoError(t, err)
	published.Check(t, byHand, "the same, 50 mm off the axis [kN]", "1260", float64(f), published.Within(1e-9, ""))
	on, err := OffAxisLimit(28000, s.Area, 0, 0)
	require.NoError(t, err, "on the axis no modulus is needed")
	assert.Equal(t, n, on)
}

// The load put back gives the limit at the edge, and on the way never more;
// larger e never raises; with prestress the whole stress at the edge is the
// limit with the prestress in it.
func TestOffTheAxis(t *testing.T) {
	rnd := rand.New(rand.NewSource(5))
	for range 500 {
		D := quantity.Length(0.2 + rnd.Float64())
		s, err := Ring(D, D*quantity.Length(0.02+0.48*rnd.Float64()))
		require.NoError(t, err)
		whole, prestress := 20000+rnd.Float64()*40000, quantity.Pressure(rnd.Float64()*8000)
		sigma := quantity.Pressure(whole) - prestress
		e := quantity.Length(rnd.Float64()) * D / 4
		f, err := OffAxisLimit(sigma, s.Area, e, s.Modulus)
		require.NoError(t, err)
		hold(t, OffAxisRule, float64(f), float64(sigma), float64(s.Area), float64(e), float64(s.Modulus))
		edge := float64(f)/float64(s.Area) + float64(f)*float64(e)*float64(D)/2/float64(s.Moment)
		require.InEpsilon(t, whole, edge+float64(prestress), 1e-12)
		more, err := OffAxisLimit(sigma, s.Area, e+0.001, s.Modulus)
		require.NoError(t, err)
		require.Less(t, more, f)
		on, err := SectionLimit(s.Area, sigma)
		require.NoError(t, err)
		require.LessOrEqual(t, f, on)
		near, err := OffAxisLimit(sigma, s.Area, 1e-15, s.Modulus)
		require.NoError(t, err)
		require.InEpsilon(t, float64(on), float64(near), 1e-10, "e to 0 is the section limit")
	}
	for code, call := range map[string]func() (quantity.Force, error){
		"pile.negative":    func() (quantity.Force, error) { return OffAxisLimit(28000, 0.09, -0.01, 0.0045) },
		"pile.notFinite":   func() (quantity.Force, error) { return OffAxisLimit(28000, 0.09, quantity.Length(math.Inf(1)), 0.0045) },
		"pile.notPositive": func() (quantity.Force, error) { return OffAxisLimit(28000, 0.09, 0.01, 0) },
	} {
		_, err := call()
		refused(t, code, err)
	}
	_, err := SectionLimit(0, 28000)
	refused(t, "pile.notPositive", err)
	_, err = OffAxisLimit(0, 0.09, 0.01, 0.0045)
	refused(t, "pile.notPositive", err)
}
