package working_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/quantity"
	. "gaugewright/calc/working"
)

func m(v float64, d quantity.Dimension) Measured { return Measured{V: v, Dim: d} }

func TestEvaluate(t *testing.T) {
	values := map[string]Measured{
		"F": m(1800, quantity.Forces), "W": m(30, quantity.Forces), "A": m(0.1256637061435917, quantity.Areas),
		"eta_lo": m(0.95, quantity.Dimensionless), "d": m(500, quantity.Pressures), "p": m(15000, quantity.Pressures),
		"D": m(0.2, quantity.Lengths), "n": m(4, quantity.Dimensionless), "g": m(9.80665, quantity.Accelerations),
		"M": m(180, quantity.Masses),
	}
	for _, c := range []struct {
		formula string
		want    float64
		dim     quantity.Dimension
	}{
		{"eta_lo*A*p + W", 1820.7078125, quantity.Forces}, // 0.95 x 0.12566371 x 15000 + 30
		{"(F - W)/(eta_lo*A)", 14826.5, quantity.Pressures},
		{"roundup((F - W)/(eta_lo*A), d)", 15000, quantity.Pressures},
		{"rounddown((F - W)/(eta_lo*A), d)", 14500, quantity.Pressures},
		{"n*pi*D^2/4", 0.1256637061435917, quantity.Areas},
		{"0.9*M*g", 1588.6773, quantity.Forces},
		{"-2^2 + 3*-2", -10, quantity.Dimensionless},
		{"2^-1", 0.5, quantity.Dimensionless},
		{"2^3^2", 512, quantity.Dimensionless}, // from the right
		{"7 - 3 - 2", 2, quantity.Dimensionless},
		{"12/3/2", 2, quantity.Dimensionless},
		{"sqrt(A)", math.Sqrt(0.1256637061435917), quantity.Lengths},
		{"min(F, W) + max(F, W, 2*F)", 3630, quantity.Forces},
		{"sum(F, W, -W)", 1800, quantity.Forces},
		{"abs(W - F)", 1770, quantity.Forces},
		{"if(F >= W, p, d)", 15000, quantity.Pressures},
		{"F > W and p >= p and d < p", 1, quantity.Dimensionless},
		{"F > W and p < d", 0, quantity.Dimensionless},
		{"rounddown(29.4, 0.2)", 29.4, quantity.Dimensionless},
		{"roundup(29.4, 0.2)", 29.4, quantity.Dimensionless},
	} {
		got, err := Evaluate(c.formula, values)
		require.NoError(t, err, c.formula)
		assert.Equal(t, c.dim, got.Dim, c.formula)
		assert.InDelta(t, c.want, got.V, 1e-5*math.Max(1, math.Abs(c.want)), c.formula)
	}
	for _, formula := range []string{
		"", "F +", "F + p", "F*", "(F", "F)", "min(F, p)", "F > p", "F^W", "F^0.5", "sqrt(F)", "sin(F)", "F $ W",
		"x", "roundup(F)", "roundup(F, 2)", "if(F > W, F, p)", "1..2", "F W", "sqrt F",
	} {
		_, err := Evaluate(formula, values)
		assert.Error(t, err, "%q", formula)
	}
}

func TestSymbols(t *testing.T) {
	assert.Equal(t, []string{"F", "W", "eta_lo", "A", "d"}, Symbols("roundup((F - W)/(eta_lo*A), d) + pi*W and max(F)"))
	assert.True(t, Bare("F"))
	assert.False(t, Bare("-F"))
}

var load = Rule{
	Key: "load", Symbol: "F", Formula: "eta_lo*A*p + W", Dim: quantity.Forces, Decimals: 1,
	Inputs: []Symbol{
		{Name: "eta_lo", Dim: quantity.Dimensionless}, {Name: "A", Dim: quantity.Areas},
		{Name: "p", Dim: quantity.Pressures}, {Name: "W", Dim: quantity.Forces},
	},
}

func TestStepOnPaper(t *testing.T) {
	b := NewBook("p14/")
	f := Put(b, load, "load", quantity.Force(0.95*0.1256637061435917*15000+30),
		In{V: 0.95}, In{V: 0.1256637061435917}, In{V: 15000}, In{V: 30})
	assert.Equal(t, "p14/load", f.Ref)
	step := b.Find("p14/load")
	difference, err := step.Check()
	require.NoError(t, err)
	assert.Less(t, difference, 1e-12)

	p := step.Print(quantity.Point)
	assert.Equal(t, "0.95 * 0.125664 m2 * 15000 kPa + 30 kN", p.Values)
	assert.Equal(t, "1820.7", p.Result)
	assert.Equal(t, "kN", p.Unit)
	assert.Equal(t, "0,95 * 0,125664 m2 * 15000 kPa + 30 kN", step.Print(quantity.Comma).Values)

	// A result printed to 0.0001 kN needs more digits of the area: with six the
	// calculator would show 1820.7120.
	fine := load
	fine.Decimals = 4
	Put(b, fine, "fine", quantity.Force(step.Value), step.Inputs...)
	p = b.Find("p14/fine").Print(quantity.Point)
	assert.Greater(t, len(p.Inputs[1]), len("0.125664"))
	got, err := Evaluate(fine.Formula, map[string]Measured{
		"eta_lo": m(0.95, quantity.Dimensionless), "A": m(parse(t, p.Inputs[1]), quantity.Areas),
		"p": m(15000, quantity.Pressures), "W": m(30, quantity.Forces),
	})
	require.NoError(t, err)
	assert.Equal(t, p.Result, quantity.Print(got.V, 4, quantity.Point))
}

func parse(t *testing.T, text string) float64 {
	s, err := quantity.ParseStated(text, quantity.Dimensionless)
	require.NoError(t, err)
	return s.Value
}

func TestNegativeNumbersStandInParentheses(t *testing.T) {
	b := NewBook("")
	rule := Rule{Key: "need", Symbol: "L", Formula: "Z_h - Z_toe", Dim: quantity.Lengths, Decimals: 2,
		Inputs: []Symbol{{Name: "Z_h", Dim: quantity.Lengths}, {Name: "Z_toe", Dim: quantity.Lengths}}}
	Put(b, rule, "need", quantity.Length(20.75), In{V: 12.4}, In{V: -8.35})
	assert.Equal(t, "12.4 m - (-8.35 m)", b.Find("need").Print(quantity.Point).Values)
}

func TestCheckFindsWhatIsWrong(t *testing.T) {
	b := NewBook("")
	Put(b, load, "wrong", quantity.Force(1820.8), In{V: 0.95}, In{V: 0.1256637061435917}, In{V: 15000}, In{V: 30})
	difference, err := b.Find("wrong").Check()
	require.NoError(t, err)
	assert.Greater(t, difference, 1e-12)

	bad := load
	bad.Dim = quantity.Pressures
	Put(b, bad, "dimension", quantity.Pressure(1), In{}, In{}, In{}, In{})
	_, err = b.Find("dimension").Check()
	assert.Error(t, err)

	Prove(b, Rule{Key: "proof", Formula: "F >= W", Inputs: []Symbol{{Name: "F", Dim: quantity.Forces}, {Name: "W", Dim: quantity.Forces}}},
		"proof", "wrong", In{V: 29}, In{V: 30})
	difference, err = b.Find("proof").Check()
	require.NoError(t, err)
	assert.Equal(t, 1.0, difference, "a statement that is not true is found")
	assert.Equal(t, []string{"proof"}, b.Find("wrong").Proofs)
}

func TestWithoutABookNothingIsKept(t *testing.T) {
	f := Put(nil, load, "load", quantity.Force(5), In{}, In{}, In{}, In{})
	assert.Equal(t, Of[quantity.Force]{V: 5}, f)
	var b *Book
	assert.Nil(t, b.Find("load"))
	assert.Nil(t, b.Under("x/"))
	assert.Empty(t, b.Steps())
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		Put(nil, load, "load", quantity.Force(5), In{V: 1}, In{V: 2}, In{V: 3}, In{V: 4})
	}))
}
