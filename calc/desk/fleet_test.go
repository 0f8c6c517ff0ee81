package desk_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/desk"
)

// Whatever the table says of a pile and the circuit it stands on, its own
// answer says, too; a choice is one trial away.
func TestTheFleetAgreesWithThePiles(t *testing.T) {
	x := newTable(t)
	x.open("../../examples/quay-shed.json")
	v := x.show("fleet", "")
	require.Equal(t, 8, v.Get("rows").Len())
	require.GreaterOrEqual(t, v.Get("columns").Len(), 3)
	sets, stopped := 0, 0
	for _, row := range v.Get("rows").Items() {
		pile := row.Get("id").Text()
		for _, cell := range row.Get("cells").Items() {
			trial := `,"pile":"` + pile + `","trial":[{"path":"/now/piles/` + pile + `/rig","value":` + quote(cell.Get("rig").Text()) +
				`},{"path":"/now/piles/` + pile + `/circuit","value":` + quote(cell.Get("circuit").Text()) + `}]`
			one := x.show("sizing", trial)
			says := cell.Get("says").Text()
			switch cell.Get("state").Text() {
			case "sets":
				sets++
				assert.Equal(t, "open", one.Get("state").Text())
				assert.Equal(t, "sets at "+one.At("/set/says").Text()+" "+one.At("/set/unit").Text(), says)
			default:
				stopped++
				assert.NotEqual(t, "open", one.Get("state").Text(), says)
			}
			if cell.Get("chosen").Bool() {
				assert.Equal(t, x.show("sizing", `,"pile":"`+pile+`"`).Get("state").Text(), one.Get("state").Text())
			}
		}
	}
	assert.Positive(t, sets)
	assert.Positive(t, stopped, "the example has a pile that some rig cannot set")
	page := x.show("fleet", `,"from":3,"count":2`)
	assert.Equal(t, 2, page.Get("rows").Len())
	assert.Equal(t, v.Get("columns").Compact(), page.Get("columns").Compact(), "totals are over all piles")
}

// 5,000 piles against every circuit of the large job.
func BenchmarkFleet(b *testing.B) {
	d := desk.New()
	d.Call(`{"verb":"open","doc":"x","as":"file"}`, largeJob(5000, 1, 10).Stable())
	for b.Loop() {
		d.Call(`{"verb":"show","doc":"x","view":"fleet"}`, nil)
	}
}
