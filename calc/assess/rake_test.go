package assess_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/job"
)

// A raking pile is refused in words, and nothing of it is computed: no reading,
// no segments, no head, in the order list neither.
func TestARakingPileIsRefused(t *testing.T) {
	root := with(t, "/piles/p/rake", "10 %")
	a := answer(t, root)
	assert.Equal(t, assess.Refused, a.State)
	require.Len(t, a.Reasons, 1)
	assert.Equal(t, assess.Note{Code: "reason.rake", Args: []string{"10 %"}}, a.Reasons[0])
	assert.Equal(t, a.Reasons, a.Segments.Notes)
	assert.Empty(t, a.Numbers())
	assert.Empty(t, a.Head.State)

	j := judge(root)
	state, ok := j.State("p")
	assert.True(t, ok)
	assert.Equal(t, assess.Refused, state)
	fit, _ := j.Fit("p", j.Berths()[0])
	assert.Equal(t, assess.Refused, fit.State)
	o := j.Order(nil)
	assert.Empty(t, o.Piles)
	require.Len(t, o.Left, 1)
	require.NotNil(t, o.Left[0].Problem)
	assert.Equal(t, "reason.rake", o.Left[0].Problem.Code)
}

// A stated rake of zero is a plumb pile; a blank one is, too.
func TestARakeOfZeroIsPlumb(t *testing.T) {
	plain := answer(t, with(t))
	require.Equal(t, assess.Open, plain.State)
	a := answer(t, with(t, "/piles/p/rake", "0 %"))
	assert.Equal(t, plain.State, a.State)
	assert.Equal(t, plain.Set.V, a.Set.V)
}

// "1:10" cannot be read as a rake. The field is blank then, but the pile is
// not plumb for that.
func TestARakeThatCannotBeReadIsNotZero(t *testing.T) {
	root := with(t)
	unread := document.NewMap()
	unread.Set("/now/piles/p/rake", document.NewText("1:10"))
	root.Set("unread", unread)
	a := answer(t, root)
	assert.Equal(t, assess.Incomplete, a.State)
	assert.Equal(t, []string{"field.piles.rake"}, a.Needs)
	assert.Equal(t, []string{"field.piles.rake"}, a.Segments.Needs)

	two := with(t)
	two.At("/now/piles/p").Set("rake", document.NewText("two values"))
	j := job.View(two)
	a, _ = assess.Of(j, nil, today).Pile("p", nil)
	assert.Equal(t, assess.Incomplete, a.State)
}

func TestTheStateAloneIsTheStateOfThePile(t *testing.T) {
	for _, values := range [][]string{{}, {"/piles/p/workingLoad", "3000 kN"}, {"/piles/p/workingLoad", "10 kN"}, {"/piles/p/rig", ""},
		{"/pileTypes/t/pressingLimit", ""}, {"/guard", "yes"}} {
		root := with(t, values...)
		state, _ := judge(root).State("p")
		assert.Equal(t, answer(t, root).State, state, "%v", values)
	}
	_, ok := judge(with(t)).State("nowhere")
	assert.False(t, ok)
}
