package basis_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/basis"
	"gaugewright/calc/quantity"
)

func TestEveryEntrySaysWhereItComesFrom(t *testing.T) {
	seen := map[string]bool{}
	for _, e := range basis.All() {
		assert.NotEmpty(t, e.Value, e.ID)
		assert.NotEmpty(t, e.Document, e.ID)
		assert.NotEmpty(t, e.Edition, e.ID)
		assert.NotEmpty(t, e.Clause, e.ID)
		assert.Contains(t, []basis.Mark{basis.Seen, basis.SecondHand, basis.Memory, basis.Practice, basis.Own}, e.Mark, e.ID)
		assert.False(t, seen[e.ID], "%s stands twice", e.ID)
		seen[e.ID] = true
		if e.Formula {
			continue
		}
		_, err := quantity.ParseStated(e.Value, e.Dim)
		assert.NoError(t, err, "%s is a stated quantity", e.ID)
	}
}

func TestFigure(t *testing.T) {
	assert.Equal(t, 0.9, basis.Figure("reaction.share"))
	assert.Equal(t, 0.75, basis.Figure("gauge.share"))
	assert.Equal(t, 1.0, basis.Figure("segment.joint"))
	assert.Equal(t, quantity.Gravity, basis.Figure("gravity"))
	assert.Panics(t, func() { basis.Figure("no such figure") })
	assert.Panics(t, func() { basis.Figure("rig.load") }, "a formula is no figure")
	_, ok := basis.Find("no such figure")
	require.False(t, ok)
}

func TestPartsOfDifferentBasisAreTold(t *testing.T) {
	stated := map[string]float64{"factor": 2, "hold/time": 30, "hold/movement": 0.001}
	of := func(field string) (float64, bool) {
		v, ok := stated[field]
		return v, ok
	}
	assert.Empty(t, basis.Mixed("still hold", of))
	assert.Equal(t, []basis.Part{{Field: "factor", Figure: "factor.high"}, {Field: "hold/movement", Figure: "hold.high.movement"}}, basis.Mixed("high factor", of))
	assert.Equal(t, basis.Part{Field: "factor"}, basis.Mixed("long hold", of)[0], "the package has no factor")
	delete(stated, "hold/movement")
	assert.Empty(t, basis.Mixed("still hold", of), "a part that is not stated is not mixed")
	assert.Empty(t, basis.Mixed("of the office", of), "a person's own")
	for _, p := range basis.Packages() {
		assert.Empty(t, basis.Mixed(p.ID, func(field string) (float64, bool) {
			for _, part := range p.Parts {
				if part.Field == field {
					return basis.Figure(part.Figure), true
				}
			}
			return 0, false
		}), p.ID)
	}
}
