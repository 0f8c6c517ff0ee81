package pile_test

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	. "gaugewright/calc/pile"
	"gaugewright/calc/quantity"
)

func TestWeakest(t *testing.T) {
	for _, c := range []struct {
		loads []quantity.Force
		want  int
	}{
		{[]quantity.Force{1800}, 0}, {[]quantity.Force{1800, 1700, 1900}, 1}, {[]quantity.Force{1800, 1700, 1700}, 1}, {[]quantity.Force{1800, 1800}, 0},
	} {
		at, err := Weakest(limits(c.loads))
		require.NoError(t, err)
		assert.Equal(t, c.want, at, "%v", c.loads)
	}
	rnd := rand.New(rand.NewSource(19))
	for range 200 {
		loads := make([]quantity.Force, 1+rnd.Intn(9))
		values := make([]float64, len(loads))
		for i := range loads {
			loads[i] = quantity.Force(100 * (1 + rnd.Intn(20)))
			values[i] = float64(loads[i])
		}
		list := limits(loads)
		at, err := Weakest(list)
		require.NoError(t, err)
		for i, l := range list {
			assert.True(t, l.Load > list[at].Load || l.Load == list[at].Load && i >= at)
		}
		hold(t, WeakestRule(list), float64(list[at].Load), values...)
	}
	_, err := Weakest(nil)
	refused(t, "pile.noLimits", err)
	_, err = Weakest([]Limit{{LimitMaker, 1800}, {LimitSplice, 0}})
	assert.Equal(t, "N_2", refused(t, "pile.notPositive", err).Symbol)
}

func limits(loads []quantity.Force) []Limit {
	list := make([]Limit, len(loads))
	for i, f := range loads {
		list[i] = Limit{LimitKeys[i%len(LimitKeys)], f}
	}
	return list
}
