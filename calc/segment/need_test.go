package segment_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/published"
	"gaugewright/calc/quantity"
	. "gaugewright/calc/segment"
	"gaugewright/calc/working"
)

// By hand, levels on the job's datum in m.
func TestNeedByHand(t *testing.T) {
	for _, c := range []struct {
		cutoff, bars, platform, grip, follower, toe quantity.Length
		head, need                                  quantity.Length
		why                                         string
	}{
		// cut-off side: 11.20 + 0.60 = 11.80; grip side: 12.60 + 0.80 - 2.00 = 11.40
		{11.20, 0.60, 12.60, 0.80, 2.00, -5.40, 11.80, 17.20, "the bars govern"},
		// 11.20 + 0.60 = 11.80; 12.60 + 0.80 - 0 = 13.40; 13.40 - (-5.40) = 18.80
		{11.20, 0.60, 12.60, 0.80, 0, -5.40, 13.40, 18.80, "the grip governs"},
		// -3.00 + 0.50 = -2.50; -1.00 + 0.40 = -0.60; -0.60 - (-12.10) = 11.50
		{-3.00, 0.50, -1.00, 0.40, 0, -12.10, -0.60, 11.50, "all below the datum"},
		// 5.00 + 0 = 5.00; 4.00 + 1.00 = 5.00
		{5.00, 0, 4.00, 1.00, 0, 1.00, 5.00, 4.00, "both alike, no bars"},
	} {
		head, err := HeadAtSet(c.cutoff, c.bars, c.platform, c.grip, c.follower)
		require.NoError(t, err, c.why)
		published.Check(t, byHand, "head at set, "+c.why+" [m]", quantity.Print(float64(c.head), 2, quantity.Point), float64(head), published.Within(1e-12, ""))
		need, err := Need(head, c.toe)
		require.NoError(t, err, c.why)
		published.Check(t, byHand, "needed length, "+c.why+" [m]", quantity.Print(float64(c.need), 2, quantity.Point), float64(need), published.Within(1e-12, ""))

		hold(t, HeadAtSetRule, float64(head), float64(c.cutoff), float64(c.bars), float64(c.platform), float64(c.grip), float64(c.follower))
		hold(t, NeedRule, float64(need), float64(head), float64(c.toe))
		tenths, err := NeedTenths(need)
		require.NoError(t, err)
		hold(t, NeedStepsRule, float64(Metres(tenths)), float64(need), float64(StepSlack), float64(Step))
	}
}

func TestNeedRefusals(t *testing.T) {
	nan := quantity.Length(math.NaN())
	for _, c := range []struct {
		code, symbol string
		levels       [5]quantity.Length
	}{
		{"segment.notFinite", "Z_c", [5]quantity.Length{nan, 0, 0, 0, 0}},
		{"segment.notFinite", "u", [5]quantity.Length{0, 0, 0, 0, quantity.Length(math.Inf(1))}},
		{"segment.negative", "l_p", [5]quantity.Length{0, -0.1, 0, 0, 0}},
		{"segment.negative", "h_g", [5]quantity.Length{0, 0, 0, -0.1, 0}},
		{"segment.negative", "u", [5]quantity.Length{0, 0, 0, 0, -0.1}},
		{"segment.tooLong", "Z_p", [5]quantity.Length{0, 0, -10001, 0, 0}},
	} {
		l := c.levels
		_, err := HeadAtSet(l[0], l[1], l[2], l[3], l[4])
		expect(t, err, c.code)
		assert.Equal(t, c.symbol, err.(*InputError).Symbol)
	}
	_, err := Need(2, 2)
	expect(t, err, "segment.need")
	_, err = Need(2, 3)
	expect(t, err, "segment.need")
	assert.Equal(t, -1.0, err.(*InputError).Value)
	_, err = Need(2, nan)
	expect(t, err, "segment.notFinite")
}

func TestTenths(t *testing.T) {
	for _, c := range []struct {
		v         quantity.Length
		need, cut int64
	}{
		{6.1, 61000, 61000}, // 6.1*10000 is 60999.99999999999 in float64
		{0.3, 3000, 3000},
		{11.8 + 5.4, 172000, 172000},
		{1.1 + 2.2, 33000, 33000},
		{6.10001, 61001, 61000},
		{6.09999, 61000, 60999},
		{6.1 + 0.9e-7, 61000, 61000}, // within the slack of 1e-7 m
		{6.1 + 1.1e-7, 61001, 61000}, // outside it
		{6.1 - 0.9e-7, 61000, 61000},
		{6.1 - 1.1e-7, 61000, 60999},
		{20 * 0.3048, 60960, 60960}, // 20 ft
		{1e-9, 1, 0},                // never nothing from something
		{1000, 10000000, 10000000},
	} {
		need, err := NeedTenths(c.v)
		require.NoError(t, err)
		assert.Equal(t, c.need, need, "need %v", c.v)
		cut, err := PieceTenths(c.v)
		require.NoError(t, err)
		assert.Equal(t, c.cut, cut, "piece %v", c.v)
	}
	// Every tenth of a millimetre up to 300 m comes back as itself, also
	// after a trip over a level far from the datum.
	for n := int64(1); n <= 3000000; n += 7 {
		need, _ := NeedTenths(Metres(n))
		cut, _ := PieceTenths(Metres(n))
		moved, _ := NeedTenths(Metres(n) + 4321.7 - 4321.7)
		if need != n || cut != n || moved != n {
			t.Fatalf("%d came back as %d, %d, %d", n, need, cut, moved)
		}
	}
	assert.Equal(t, quantity.Length(6.1), Metres(61000))

	for code, v := range map[string]quantity.Length{
		"segment.need": 0, "segment.notFinite": quantity.Length(math.NaN()), "segment.tooLong": 1000.1,
	} {
		_, err := NeedTenths(v)
		expect(t, err, code)
	}
	_, err := NeedTenths(-1)
	expect(t, err, "segment.need")
	for code, v := range map[string]quantity.Length{
		"segment.negative": -0.0001, "segment.notFinite": quantity.Length(math.Inf(-1)), "segment.tooLong": 1000.1,
	} {
		_, err := PieceTenths(v)
		expect(t, err, code)
	}
}

func expect(t *testing.T, err error, code string) {
	t.Helper()
	var e *InputError
	require.ErrorAs(t, err, &e)
	require.Equal(t, code, e.Code)
	assert.Greater(t, len(e.Error()), 20)
}

// hold checks a rule against the value of the Go function by the evaluator,
// which shares no arithmetic with it.
func hold(t *testing.T, rule working.Rule, value float64, inputs ...float64) {
	t.Helper()
	names := make([]string, len(rule.Inputs))
	for i, s := range rule.Inputs {
		names[i] = s.Name
		assert.NotEmpty(t, s.Key)
	}
	assert.ElementsMatch(t, working.Symbols(rule.Formula), names, rule.Key)
	assert.False(t, working.Bare(rule.Formula), rule.Key)
	assert.NotEmpty(t, rule.Basis)
	assert.LessOrEqual(t, differs(t, rule, value, inputs...), 1e-12, rule.Key)
}

func differs(t *testing.T, rule working.Rule, value float64, inputs ...float64) float64 {
	t.Helper()
	ins := make([]working.In, len(inputs))
	for i, v := range inputs {
		ins[i] = working.In{V: v}
	}
	b := working.NewBook("")
	if rule.Statement {
		working.Prove(b, rule, "x", "", ins...)
	} else {
		working.Put(b, rule, "x", quantity.Ratio(value), ins...)
	}
	difference, err := b.Find("x").Check()
	require.NoError(t, err, rule.Key)
	return difference
}

// A rule that gave the same with another input would explain nothing.
func TestEveryInputMatters(t *testing.T) {
	cost := CostRule(2, true)
	for _, c := range []struct {
		rule   working.Rule
		value  float64
		inputs []float64
	}{
		{HeadAtSetRule, 11.8, []float64{11.2, 0.6, 0, 0, 0}}, // the cut-off side governs
		{HeadAtSetRule, 11.4, []float64{0, 0, 12.6, 0.8, 2}}, // the grip side governs
		{NeedRule, 17.2, []float64{11.8, -5.4}},
		{NeedStepsRule, 17.2, []float64{17.2, 1e-7, 1e-4}},
		{TotalRule(2), 26, []float64{1, 6, 2, 10}},
		{OffCutRule, 0.3, []float64{17.5, 17.2}},
		{cost, 0.3 + 2 + 0.5 + 0.2, []float64{17.5, 17.2, 1, 1, 2, 0.5, 0.1}},
	} {
		require.LessOrEqual(t, differs(t, c.rule, c.value, c.inputs...), 1e-12, c.rule.Key)
		for i, v := range c.inputs {
			if v == 0 || c.rule.Inputs[i].Name == "s" || c.rule.Inputs[i].Name == "d" {
				continue // not on the side that governs, or swallowed by the rounding
			}
			changed := append([]float64(nil), c.inputs...)
			changed[i] *= 1.01
			assert.Greater(t, differs(t, c.rule, c.value, changed...), 1e-6, "%s does not feel %s", c.rule.Key, c.rule.Inputs[i].Name)
		}
	}
}
