package window_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/quantity"
	. "gaugewright/calc/window"
)

// By hand: a dial to 40 MPa in divisions of 0.5 MPa; a quarter is 10.0 MPa. To
// 15.0 MPa that is 10.0, 10.5, ... 15.0: eleven rows.
func TestCardRowsByHand(t *testing.T) {
	rows := CardRows(500, 40000, 14500, 15000)
	require.Len(t, rows, 11)
	assert.Equal(t, CardRow{Reading: 10000}, rows[0])
	assert.Equal(t, CardRow{Reading: 14500, Set: true}, rows[9])
	assert.Equal(t, CardRow{Reading: 15000, Never: true}, rows[10])

	// 0.1 MPa divisions from 10.0 to 30.0 MPa would be 201 rows; every fifth
	// division gives 41, and the set reading 23.3 stands between them.
	rows = CardRows(100, 40000, 23300, 30000)
	require.Len(t, rows, 42)
	assert.InDelta(t, 10500, float64(rows[1].Reading), 1e-9)
	assert.Equal(t, quantity.Pressure(23300), rows[27].Reading)
	assert.True(t, rows[27].Set)
	assert.InDelta(t, 23500, float64(rows[28].Reading), 1e-9)

	// A set low on the dial, and one division only.
	rows = CardRows(500, 40000, 4000, 4000)
	assert.Equal(t, []CardRow{{Reading: 4000, Set: true, Never: true}}, rows)

	for _, bad := range [][4]quantity.Pressure{{0, 40000, 1000, 2000}, {500, 0, 1000, 2000}, {500, 40000, 0, 2000}, {500, 40000, 3000, 2000}} {
		assert.Empty(t, CardRows(bad[0], bad[1], bad[2], bad[3]))
	}
}

func TestEveryCardFitsItsPage(t *testing.T) {
	rnd := rand.New(rand.NewSource(9))
	for range 20000 {
		d := []float64{1, 20, 50, 100, 200, 250, 500, 1000, 68.9475729}[rnd.Intn(9)]
		full := d * float64(20+rnd.Intn(800))
		last := 1 + rnd.Intn(int(full/d))
		at := 1 + rnd.Intn(last)
		rows := CardRows(quantity.Pressure(d), quantity.Pressure(full), quantity.Pressure(float64(at)*d), quantity.Pressure(float64(last)*d))
		require.NotEmpty(t, rows)
		require.LessOrEqual(t, len(rows), MostCardRows)
		sets, nevers := 0, 0
		for i, r := range rows {
			if i > 0 {
				require.Greater(t, r.Reading, rows[i-1].Reading)
			}
			n := float64(r.Reading) / d
			require.InDelta(t, math.Round(n), n, 1e-9, "a whole division")
			if r.Set {
				sets++
				require.InDelta(t, float64(at)*d, float64(r.Reading), 1e-6)
			}
			if r.Never {
				nevers++
				require.Equal(t, len(rows)-1, i, "nothing stands above the never-exceed reading")
			}
		}
		require.Equal(t, 1, sets)
		require.Equal(t, 1, nevers)
	}
}
