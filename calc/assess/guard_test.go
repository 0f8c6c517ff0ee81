package assess_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/quantity"
)

// guarded is the hand case with the guard on: class 1.0, 30 C, zero within 0.1
// MPa, the weight on the head within 1.5 kN. By hand: u_p = 293.314 kPa, u_eta =
// 0.0144338, u_W = 0.866 kN. At 15.5 MPa with eta = 0.975: F = 1929.1, U = 1.96
// sqrt(35.94^2 + 28.11^2 + 0.87^2) = 89.45, so 1839.7 kN are certain; at 15.0
// they are 1867.8 - 88.4 = 1779.4. For the pile's 2,200 kN: 16.5 MPa gives 2051.6
// + 91.7 = 2143.3, 17.0 gives 2112.9 + 92.8 = 2205.7.
var guarded = []string{"/guard", "yes", "/gauges/g/class", "1.0 %", "/gauges/g/celsius", "30", "/gauges/g/zeroError", "0.1 MPa",
	"/rigs/r/circuits/c/onHeadUncertainty", "1.5 kN"}

func TestHandCaseGuarded(t *testing.T) {
	a := answer(t, with(t, guarded...))
	assert.True(t, a.Guarded)
	assert.Equal(t, assess.Open, a.State, "%v", a.Reasons)
	assert.Equal(t, "15.5 MPa", a.Set.Text(quantity.Point))
	assert.Equal(t, "16.5 MPa", a.Never.Text(quantity.Point))
	assert.Equal(t, "89.4 kN", a.Uncertainty.Text(quantity.Point))
	assert.Nil(t, a.PlainSet, "both windows are open")

	off := answer(t, with(t, more(guarded, "/guard", "no")...))
	assert.False(t, off.Guarded)
	assert.Equal(t, "15.0 MPa", off.Set.Text(quantity.Point))
}

// Without the guard 2,000 kN allow 15.5 MPa; with it 15.0 MPa, which is below
// the guarded set reading.
func TestBothWindowsAreShownWhereOnlyOneIsOpen(t *testing.T) {
	a := answer(t, with(t, more(guarded, "/pileTypes/t/pressingLimit", "2000 kN")...))
	assert.Equal(t, assess.Closed, a.State)
	require.NotNil(t, a.PlainSet)
	assert.Equal(t, "15.0 MPa", a.PlainSet.Text(quantity.Point))
	assert.Equal(t, "15.5 MPa", a.PlainNever.Text(quantity.Point))
	for _, way := range a.Ways {
		assert.NotContains(t, way.Code, "guard", "turning the guard off is never offered")
	}
}

func TestTheGuardAsksForWhatItNeeds(t *testing.T) {
	for path, key := range map[string]string{"/gauges/g/class": "field.gauges.class", "/gauges/g/celsius": "field.gauges.celsius",
		"/gauges/g/zeroError": "field.gauges.zeroError", "/rigs/r/circuits/c/onHeadUncertainty": "field.rigs.circuits.onHeadUncertainty",
		"/gauges/g/fullScale": "field.gauges.fullScale"} {
		a := answer(t, with(t, more(guarded, path, "")...))
		assert.Equal(t, assess.Incomplete, a.State, path)
		assert.Contains(t, a.Needs, key)
		assert.Nil(t, a.Set, "no reading that is guarded by nothing")
	}
}

func TestAWiderDoubtNeverWidensTheWindow(t *testing.T) {
	width := func(values ...string) float64 {
		a := answer(t, with(t, more(guarded, values...)...))
		if a.Set == nil || a.Never == nil {
			return -1e9
		}
		return a.Never.V - a.Set.V
	}
	plain := answer(t, tree(t, handJob))
	before := width()
	assert.LessOrEqual(t, before, plain.Never.V-plain.Set.V)
	for _, wider := range [][]string{{"/gauges/g/class", "2.5 %"}, {"/gauges/g/celsius", "45"}, {"/gauges/g/celsius", "-10"}, {"/gauges/g/zeroError", "1 MPa"},
		{"/rigs/r/circuits/c/onHeadUncertainty", "60 kN"}, {"/rigs/r/circuits/c/efficiency/low", "0.85"}} {
		assert.LessOrEqual(t, width(wider...), before, "%v", wider)
	}
}

// guardTrees hands these jobs on to the tests of the working.
func guardTrees(t *testing.T, into map[string]*document.Node) {
	into["guarded"] = with(t, guarded...)
	into["guarded, closed"] = with(t, more(guarded, "/pileTypes/t/pressingLimit", "2000 kN")...)
	into["guarded, hopeless limit"] = with(t, more(guarded, "/pileTypes/t/pressingLimit", "90 kN")...)
}
