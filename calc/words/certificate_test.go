package words_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/calibration"
	"gaugewright/calc/quantity"
	"gaugewright/calc/rig"
	"gaugewright/calc/words"
	"gaugewright/calc/working"
)

// Whatever refuses or questions a certificate has a sentence, and every step of
// one a title and names for its symbols.
func TestCertificatesAreWorded(t *testing.T) {
	found := map[string]bool{}
	for _, dir := range []string{"calibration", "rig"} {
		for c := range codesIn(t, dir, `"((?:calibration|certificate)\.[A-Za-z]+)"`, func(line string) bool {
			return strings.Contains(line, "ode") || strings.Contains(line, "add(") || strings.Contains(line, "figure")
		}) {
			found[c] = true
		}
	}
	require.GreaterOrEqual(t, len(found), 25)
	for _, figure := range []string{"slopeMost", "slopeLeast", "unitsMost", "unitsLeast"} {
		delete(found, "certificate."+figure)
	}
	for c := range found {
		assert.True(t, words.Has(c), "%s has no sentence", c)
	}
	for _, s := range "cnevudpb" {
		assert.True(t, words.Has("certificate.state."+string(s)))
	}
	for _, s := range []calibration.Shape{calibration.Rectangular, calibration.Normal, calibration.Student} {
		assert.True(t, words.Has("shape."+string(rune(s))))
	}
	for _, key := range rig.TermKeys {
		assert.True(t, words.Has("rule.rig.term."+key), key)
	}

	var points []calibration.Point
	places := calibration.Places{DimX: quantity.Pressures, DimY: quantity.Forces}
	for i, y := range []float64{627, 1236, 1833, 2441, 3040, 3649, 4252} {
		points = append(points, calibration.Point{X: 5000 * float64(i+1), Y: y})
		places.X, places.Y = append(places.X, ""), append(places.Y, "")
	}
	for _, degree := range []calibration.Degree{calibration.Line, calibration.Quadratic} {
		b := working.NewBook("")
		c, err := calibration.Fit(points, degree)
		require.NoError(t, err)
		w := c.Work(b, "", places)
		in, err := c.Inverse(2000, 0.95, 1)
		require.NoError(t, err)
		w.Back("back", working.In{V: 2000}, in, 1, true)
		ahead, err := c.Predict(16000, 0.95, 1)
		require.NoError(t, err)
		w.Ahead("ahead", working.In{V: 16000}, ahead, 1, true)
		for _, s := range b.Steps() {
			assert.True(t, words.Has("rule."+s.Rule.Key), s.Rule.Key)
			for _, symbol := range s.Rule.Inputs {
				assert.True(t, words.Has("symbol."+symbol.Key), "%s of %s", symbol.Key, s.Rule.Key)
			}
		}
	}

	_, err := calibration.Fit(points[:4], calibration.Quadratic)
	var fault *calibration.Fault
	require.ErrorAs(t, err, &fault)
	assert.Equal(t, "A quadratic through 4 points cannot be told from scatter; at least 6 are needed. A straight line takes fewer.", words.Say(fault.Code, fault.Args(quantity.Point)...))
}
