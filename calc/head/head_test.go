package head_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	. "gaugewright/calc/head"
	"gaugewright/calc/published"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

var blank Optional

func k(v float64) Optional { return Known(quantity.Length(v)) }

// byHand are levels and lengths that were worked out apart from the code.
var byHand = published.Worked("pile heads, by hand")

// near compares two optional lengths: both not known, or both known and alike.
func near(t *testing.T, want, got Optional, what string) {
	t.Helper()
	assert.Equal(t, want.Known, got.Known, "%s known", what)
	if want.Known {
		published.Check(t, byHand, what+" [m]", quantity.Print(float64(want.V), 2, quantity.Point), float64(got.V), published.Within(1e-12, ""))
	} else {
		assert.Zero(t, got.V, what)
	}
}

func TestByHand(t *testing.T) {
	for _, c := range []struct {
		why  string
		in   Input
		want Result
	}{
		{
			// c = 12.35 - 11.20 = 1.15; saw at 11.20 + 0.60 = 11.80, which is
			// 11.80 - 12.60 = -0.80 against the platform; 1.15 - 0.60 = 0.55.
			"a high head, the cut below the platform",
			Input{Cutoff: 11.20, Head: k(12.35), Projection: k(0.60), Lap: k(0.80), Platform: k(12.60)},
			Result{State: ToCut, Above: k(1.15), SawLevel: k(11.80), SawAbovePlatform: k(-0.80), FromHead: k(0.55), OffCut: k(0.55)},
		},
		{
			// Spun pile, no bars. c = -1.30 - (-2.00) = 0.70; saw at -2.00, which
			// is -2.00 - (-2.50) = 0.50 above the platform.
			"levels below the datum, no bars, the cut above the platform",
			Input{Cutoff: -2.00, Head: k(-1.30), Projection: k(0), Platform: k(-2.50)},
			Result{State: ToCut, Above: k(0.70), SawLevel: k(-2.00), SawAbovePlatform: k(0.50), FromHead: k(0.70), OffCut: k(0.70)},
		},
		{
			// c = 0.40 - (-0.20) = 0.60 over the datum; 0.60 - 0.60 = 0.
			"exactly at saw level, across the datum",
			Input{Cutoff: -0.20, Head: k(0.40), Projection: k(0.60), Platform: k(0.40)},
			Result{State: AtSawLevel, Above: k(0.60), SawLevel: k(0.40), SawAbovePlatform: k(0), FromHead: k(0), OffCut: k(0)},
		},
		{
			// c = 11.45 - 11.20 = 0.25; bars short by 0.60 - 0.25 = 0.35.
			"bars short",
			Input{Cutoff: 11.20, Head: k(11.45), Projection: k(0.60), Lap: k(0.80)},
			Result{State: BarsShort, Above: k(0.25), SawLevel: k(11.80), OffCut: k(0), Short: k(0.35)},
		},
		{
			// c = 0: all of the bars is missing.
			"the head just at cut-off, bars wanted",
			Input{Cutoff: 11.20, Head: k(11.20), Projection: k(0.60)},
			Result{State: BarsShort, Above: k(0), SawLevel: k(11.80), OffCut: k(0), Short: k(0.60)},
		},
		{
			"the head just at cut-off, no bars",
			Input{Cutoff: 11.20, Head: k(11.20), Projection: k(0)},
			Result{State: AtSawLevel, Above: k(0), SawLevel: k(11.20), FromHead: k(0), OffCut: k(0)},
		},
		{
			// c = 10.85 - 11.20 = -0.35; broken back to 10.85 - 0.80 = 10.05;
			// built up by 0.35 + 0.80 = 1.15, which ends at 10.05 + 1.15 = 11.20.
			"a low head",
			Input{Cutoff: 11.20, Head: k(10.85), Projection: k(0.60), Lap: k(0.80)},
			Result{State: BuildUp, Above: k(-0.35), SawLevel: k(11.80), OffCut: k(0), BreakTo: k(10.05), Height: k(1.15)},
		},
		{
			// Lap known to be zero is not lap not known: -(-0.35) + 0 = 0.35.
			"a low head, no lap needed",
			Input{Cutoff: 11.20, Head: k(10.85), Projection: k(0), Lap: k(0)},
			Result{State: BuildUp, Above: k(-0.35), SawLevel: k(11.20), OffCut: k(0), BreakTo: k(10.85), Height: k(0.35)},
		},
		{
			"a low head, lap not known",
			Input{Cutoff: 11.20, Head: k(10.85), Projection: k(0.60)},
			Result{State: BuildUp, Above: k(-0.35), SawLevel: k(11.80), OffCut: k(0), LapMissing: true},
		},
		{
			"a low head is low whatever the bars",
			Input{Cutoff: 11.20, Head: k(10.85), Lap: k(0.80)},
			Result{State: BuildUp, Above: k(-0.35), BreakTo: k(10.05), Height: k(1.15)},
		},
		{
			"bars not known",
			Input{Cutoff: 11.20, Head: k(12.35), Platform: k(12.60)},
			Result{State: NotKnown, Above: k(1.15)},
		},
		{
			"head not surveyed: where to saw is known already",
			Input{Cutoff: 11.20, Projection: k(0.60), Platform: k(12.60)},
			Result{State: NotKnown, SawLevel: k(11.80), SawAbovePlatform: k(-0.80)},
		},
		{"nothing but the cut-off", Input{Cutoff: 11.20}, Result{}},
	} {
		got, err := Compute(c.in)
		require.NoError(t, err, c.why)
		assert.Equal(t, c.want.State, got.State, "%s: %s", c.why, got.State)
		assert.Equal(t, c.want.LapMissing, got.LapMissing, c.why)
		near(t, c.want.Above, got.Above, c.why+": above cut-off")
		near(t, c.want.SawLevel, got.SawLevel, c.why+": saw level")
		near(t, c.want.SawAbovePlatform, got.SawAbovePlatform, c.why+": saw above platform")
		near(t, c.want.FromHead, got.FromHead, c.why+": from head")
		near(t, c.want.OffCut, got.OffCut, c.why+": off-cut")
		near(t, c.want.Short, got.Short, c.why+": short")
		near(t, c.want.BreakTo, got.BreakTo, c.why+": break to")
		near(t, c.want.Height, got.Height, c.why+": height")
	}
}

// The slack is 1e-9 m on both boundaries; 2e-9 is outside it.
func TestBoundaries(t *testing.T) {
	for _, c := range []struct {
		head, bars float64
		want       State
	}{
		{0.6 + 0.5e-9, 0.6, AtSawLevel},
		{0.6 - 0.5e-9, 0.6, AtSawLevel},
		{0.6 + 2e-9, 0.6, ToCut},
		{0.6 - 2e-9, 0.6, BarsShort},
		{-0.5e-9, 0.6, BarsShort},
		{-2e-9, 0.6, BuildUp},
		{-0.5e-9, 0, AtSawLevel},
		{0.5e-9, 0, AtSawLevel},
		{2e-9, 0, ToCut},
		{-2e-9, 0, BuildUp},
	} {
		got, err := Compute(Input{Head: k(c.head), Projection: k(c.bars)})
		require.NoError(t, err)
		assert.Equal(t, c.want, got.State, "%v %v: %s", c.head, c.bars, got.State)
	}
	// 11.9 - 11.3 is 0.5999999999999996 in float64, and still at saw level.
	got, err := Compute(Input{Cutoff: 11.3, Head: k(11.9), Projection: k(0.6)})
	require.NoError(t, err)
	assert.NotEqual(t, quantity.Length(0.6), got.Above.V)
	assert.Equal(t, AtSawLevel, got.State)
}

func TestRefusals(t *testing.T) {
	nan, inf := Known(quantity.Length(math.NaN())), Known(quantity.Length(math.Inf(-1)))
	for _, c := range []struct {
		code, symbol string
		in           Input
	}{
		{"head.notFinite", "Z_c", Input{Cutoff: nan.V}},
		{"head.notFinite", "Z_h", Input{Head: inf}},
		{"head.notFinite", "l_p", Input{Projection: nan}},
		{"head.notFinite", "l_0", Input{Lap: nan}},
		{"head.notFinite", "Z_p", Input{Platform: inf}},
		{"head.negative", "l_p", Input{Projection: k(-0.1)}},
		{"head.negative", "l_0", Input{Lap: k(-0.1)}},
	} {
		_, err := Compute(c.in)
		var e *InputError
		require.ErrorAs(t, err, &e)
		assert.Equal(t, []string{c.code, c.symbol}, []string{e.Code, e.Symbol})
		assert.Contains(t, e.Error(), c.symbol)
		assert.Contains(t, e.Error(), e.Example)
	}
	// What is not known is not looked at.
	_, err := Compute(Input{Lap: Optional{V: -1}})
	assert.NoError(t, err)
	assert.False(t, blank.Known)
}

// Every length of a result is given by its rule through the evaluator, which
// shares no arithmetic with Compute.
func TestRulesAgainstCompute(t *testing.T) {
	rnd := rand.New(rand.NewSource(1))
	seen := map[State]int{}
	cm := func(low, high int) float64 { return float64(low+rnd.Intn(high-low+1)) / 100 }
	for range 3000 {
		in := Input{Cutoff: quantity.Length(cm(-500, 1500)), Projection: k(cm(0, 80)), Lap: k(cm(0, 100)), Platform: k(cm(-500, 1500))}
		in.Head = Known(in.Cutoff + quantity.Length(cm(-60, 160)))
		r, err := Compute(in)
		require.NoError(t, err)
		seen[r.State]++
		for _, c := range []struct {
			rule   working.Rule
			value  Optional
			inputs []Optional
		}{
			{AboveRule, r.Above, []Optional{in.Head, Known(in.Cutoff)}},
			{SawLevelRule, r.SawLevel, []Optional{Known(in.Cutoff), in.Projection}},
			{SawAbovePlatformRule, r.SawAbovePlatform, []Optional{Known(in.Cutoff), in.Projection, in.Platform}},
			{FromHeadRule, r.FromHead, []Optional{r.Above, in.Projection}},
			{OffCutRule, r.OffCut, []Optional{r.Above, in.Projection}},
			{ShortRule, r.Short, []Optional{in.Projection, r.Above}},
			{BreakToRule, r.BreakTo, []Optional{in.Head, in.Lap}},
			{HeightRule, r.Height, []Optional{r.Above, in.Lap}},
		} {
			if c.value.Known {
				require.LessOrEqual(t, differs(t, c.rule, c.value, c.inputs...), 1e-12, "%s %v", c.rule.Key, in)
			}
		}
		// The three ways to the same cut agree.
		if r.State == ToCut {
			assert.InDelta(t, float64(r.SawLevel.V), float64(in.Head.V-r.FromHead.V), 1e-12)
			assert.InDelta(t, float64(r.SawLevel.V), float64(in.Platform.V+r.SawAbovePlatform.V), 1e-12)
			assert.Equal(t, r.FromHead, r.OffCut)
		}
		if r.State == BuildUp {
			assert.InDelta(t, float64(in.Cutoff), float64(r.BreakTo.V+r.Height.V), 1e-12)
		}
	}
	for _, s := range []State{ToCut, AtSawLevel, BarsShort, BuildUp} {
		assert.GreaterOrEqual(t, seen[s], 5, s.String())
	}
}

func differs(t *testing.T, rule working.Rule, value Optional, inputs ...Optional) float64 {
	t.Helper()
	ins := make([]working.In, len(inputs))
	for i, v := range inputs {
		ins[i] = working.In{V: float64(v.V)}
	}
	b := working.NewBook("")
	working.Put(b, rule, "x", value.V, ins...)
	difference, err := b.Find("x").Check()
	require.NoError(t, err, rule.Key)
	return difference
}

func TestEveryInputMatters(t *testing.T) {
	for _, c := range []struct {
		rule   working.Rule
		value  float64
		inputs []float64
	}{
		{AboveRule, 1.15, []float64{12.35, 11.2}},
		{SawLevelRule, 11.8, []float64{11.2, 0.6}},
		{SawAbovePlatformRule, -0.8, []float64{11.2, 0.6, 12.6}},
		{FromHeadRule, 0.55, []float64{1.15, 0.6}},
		{OffCutRule, 0.55, []float64{1.15, 0.6}},
		{ShortRule, 0.35, []float64{0.6, 0.25}},
		{BreakToRule, 10.05, []float64{10.85, 0.8}},
		{HeightRule, 1.15, []float64{-0.35, 0.8}},
	} {
		names := make([]string, len(c.rule.Inputs))
		inputs := make([]Optional, len(c.inputs))
		for i, v := range c.inputs {
			names[i], inputs[i] = c.rule.Inputs[i].Name, k(v)
			assert.NotEmpty(t, c.rule.Inputs[i].Key)
		}
		assert.ElementsMatch(t, working.Symbols(c.rule.Formula), names, c.rule.Key)
		assert.False(t, working.Bare(c.rule.Formula))
		require.LessOrEqual(t, differs(t, c.rule, k(c.value), inputs...), 1e-12, c.rule.Key)
		for i := range inputs {
			inputs[i].V *= 1.01
			assert.Greater(t, differs(t, c.rule, k(c.value), inputs...), 1e-6, "%s does not feel %s", c.rule.Key, names[i])
			inputs[i].V /= 1.01
		}
	}
}

func BenchmarkCompute(b *testing.B) {
	in := Input{Cutoff: 11.2, Head: k(12.35), Projection: k(0.6), Lap: k(0.8), Platform: k(12.6)}
	for b.Loop() {
		if r, err := Compute(in); err != nil || r.State != ToCut {
			b.Fatal("not to cut")
		}
	}
}

func TestExpectedHead(t *testing.T) {
	// By hand, across the datum: -5.40 + 18.0 = 12.60; below it -20.0 + 12.0 = -8.0.
	for _, c := range [][3]float64{{-5.40, 18, 12.60}, {-20, 12, -8}, {3.5, 0.5, 4}} {
		what := "head of " + quantity.Digits(c[1]) + " m on " + quantity.Digits(c[0]) + " [m]"
		published.Check(t, byHand, what, quantity.Print(c[2], 2, quantity.Point), float64(Expected(quantity.Length(c[0]), quantity.Length(c[1]))), published.Within(1e-12, ""))
	}
}
