package demand_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/demand"
	"gaugewright/calc/working"
)

func TestSetLoad(t *testing.T) {
	assert.Equal(t, 1800.0, float64(demand.SetLoad(2.0, 900)))
	assert.Greater(t, demand.SetLoad(2.0, 901), demand.SetLoad(2.0, 900), "a larger load never lowers the set load")

	b := working.NewBook("")
	working.Put(b, demand.SetLoadRule, "F_set", demand.SetLoad(2.2, 855), working.In{V: 2.2}, working.In{V: 855})
	difference, err := b.Find("F_set").Check()
	require.NoError(t, err)
	assert.Less(t, difference, 1e-12)
}
