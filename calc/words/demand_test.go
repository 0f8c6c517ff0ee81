package words_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/basis"
	"gaugewright/calc/demand"
	"gaugewright/calc/quantity"
	"gaugewright/calc/words"
	"gaugewright/calc/working"
)

// Whatever a set load may be refused with has a sentence, and every step and
// symbol a name.
func TestSetLoadsAreWorded(t *testing.T) {
	found := codesIn(t, "demand", `"(demand\.[A-Za-z.]+)"`, noRule)
	require.GreaterOrEqual(t, len(found), 18)
	for c := range found {
		assert.True(t, words.Has(c), "%s has no sentence", c)
	}
	for _, p := range basis.Packages() {
		assert.True(t, words.Has("package."+p.ID), p.ID)
	}

	ratio := func(v quantity.Ratio) working.Of[quantity.Ratio] { return working.Of[quantity.Ratio]{V: v} }
	force := func(v quantity.Force) working.Of[quantity.Force] { return working.Of[quantity.Force]{V: v} }
	credit := demand.Credit{By: "X", Why: "Y"}
	var ratings []demand.Rating
	for _, key := range demand.RiskKeys {
		ratings = append(ratings, demand.Rating{Key: key, Weight: ratio(1), Rating: ratio(2)})
	}
	tests := demand.Tests{Stiff: true, Xi1: ratio(1.3), Xi2: ratio(1.2), Credit: credit,
		Tests:        []demand.Test{{Resistance: force(1500)}, {Resistance: force(1600)}},
		Combinations: []demand.Combination{{Action: force(900), Factor: ratio(1.1)}, {Action: force(800), Factor: ratio(1.5)}}}
	own := tests
	own.Tests = []demand.Test{{Resistance: force(1500), SetLoad: force(1600)}, {Resistance: force(1600), SetLoad: force(1600)}}
	ground := demand.Ground{Drag: force(10), DragFactor: ratio(1), DugAway: force(10), Settling: force(10), SetUp: demand.SetUp{WholePile: "no"}}
	for _, s := range []demand.Scheme{demand.Single{Factor: ratio(2), WorkingLoad: force(900)}, tests, own,
		demand.Reduction{Action: force(900), Risk: demand.Risk{Ratings: ratings, Redundancy: "low"}, Test: "static", Share: ratio(0.1), Credit: credit}} {
		b := working.NewBook("")
		r, err := demand.Compute(b, s, ground)
		require.NoError(t, err)
		pile := demand.Pile{WorkingLoad: force(900), Embedded: working.Of[quantity.Length]{V: 5}, Width: working.Of[quantity.Length]{V: 0.3}}
		for _, n := range demand.Notes(b, s, ground, r, pile) {
			assert.True(t, words.Has(n.Code), n.Code)
		}
		for _, step := range b.Steps() {
			assert.True(t, words.Has("rule."+step.Rule.Key), step.Rule.Key)
			for _, symbol := range step.Rule.Inputs {
				assert.True(t, words.Has("symbol."+symbol.Key), symbol.Key)
			}
		}
	}

	var e *demand.InputError
	require.ErrorAs(t, credit.For(demand.SetHold), &e)
	assert.Contains(t, words.Say(e.Code, e.Args(quantity.Point)...), "A set hold is no test")
}
