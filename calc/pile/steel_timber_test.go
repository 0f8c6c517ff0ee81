package pile_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/basis"
	. "gaugewright/calc/pile"
	"gaugewright/calc/published"
	"gaugewright/calc/quantity"
)

func TestYieldAgainstTheTable(t *testing.T) {
	bands := []float64{0, 16, 40, 63, 80, 100}
	mm := quantity.Must("mm")
	yield := published.Source{Document: "EN 10025-2, 2004", Place: "Table 7", Mark: basis.SecondHand}
	for _, row := range table(t, "steel_yield.csv", 4) {
		grade := "S" + row[0]
		previous := math.Inf(1)
		for i := 1; i < len(bands); i++ {
			for _, thickness := range []float64{bands[i-1] + 0.01, (bands[i-1] + bands[i]) / 2, bands[i]} {
				id, err := SteelFigure(grade, quantity.Length(mm.Coherent(thickness)))
				require.NoError(t, err)
				published.Check(t, yield, grade+", up to "+quantity.Digits(bands[i])+" mm [MPa]", row[i], figure(id)/1000, published.Exact)
			}
			assert.LessOrEqual(t, row.num(i), previous, "thicker is never stronger")
			previous = row.num(i)
		}
		_, err := SteelFigure(grade, 0.1001)
		refused(t, "pile.above", err)
	}
}

func TestGrades(t *testing.T) {
	for text, ok := range map[string]bool{
		"S355": true, "s355j2": true, "S355 J2 + N": true, "S355K2+M": true, "S355J2H": true, "S235JRH": true, "S275JR+AR": true, "S355H": true,
		"": false, "S355NL": false, "S355GP": false, "S460": false, "S355J2W": false, "355": false, "S3555": false, "S355J2+Z": false, "X52": false,
	} {
		id, err := SteelFigure(text, 0.012)
		if ok {
			require.NoError(t, err, text)
			assert.Contains(t, id, "steel.S", text)
			continue
		}
		var e *InputError
		require.ErrorAs(t, err, &e, text)
		assert.Equal(t, "pile.gradeUnknown", e.Code)
		assert.Equal(t, text, e.Text)
		assert.Equal(t, "S235, S275, S355, S450", e.Allowed)
	}
	_, err := SteelFigure("S355", 0)
	refused(t, "pile.notPositive", err)
}

// EN 384:2004 gives the values of EN 338:2009 by f_c,0,k = 5 f_m,k^0.45 in
// whole MPa, and E_0,05 as 0.67 of the mean modulus of softwood and 0.84 of
// that of hardwood; means 8, 11, 12, 11 and 13 GPa (from memory).
func TestTimberClasses(t *testing.T) {
	rules := published.Source{Document: "EN 384, 2004, and EN 338, 2009", Place: "formulas of the classes", Mark: basis.Memory}
	for class, c := range map[string]struct{ bending, mean, share float64 }{
		"C16": {16, 8, 0.67}, "C24": {24, 11, 0.67}, "C30": {30, 12, 0.67}, "D30": {30, 11, 0.84}, "D40": {40, 13, 0.84},
	} {
		strength, stiffness, err := TimberFigures(" " + class)
		require.NoError(t, err)
		published.Check(t, rules, "f_c,0,k of "+class+" [MPa]", quantity.Digits(math.Round(5*math.Pow(c.bending, 0.45))), figure(strength)/1000, published.Exact)
		published.Check(t, rules, "E_0,05 of "+class+" [GPa]", quantity.Print(c.share*c.mean, 2, quantity.Point), figure(stiffness)/1e6, published.Within(0.051, "the class is in tenths of a GPa"))
	}
	_, _, err := TimberFigures("C25")
	refused(t, "pile.timberUnknown", err)
}

func TestShareOfStrength(t *testing.T) {
	// By hand: 0.8 x 355 = 284 MPa, 0.9 x 355 = 319.5 MPa, 0.8 x 21 = 16.8 MPa.
	for _, c := range []struct {
		share string
		f     float64
		want  string
	}{{"steel.share.low", 355000, "284000"}, {"steel.share.high", 355000, "319500"}, {"timber.share", 21000, "16800"}} {
		s, err := ShareStress(quantity.Ratio(figure(c.share)), quantity.Pressure(c.f))
		require.NoError(t, err)
		published.Check(t, byHand, c.share+" of "+quantity.Digits(c.f)+" [kPa]", c.want, float64(s), published.Within(1e-9, ""))
		hold(t, SteelStressRule, float64(s), figure(c.share), c.f)
		hold(t, TimberStressRule, float64(s), figure(c.share), c.f)
	}
	_, err := ShareStress(0, 355000)
	refused(t, "pile.notPositive", err)
	_, err = ShareStress(1.01, 355000)
	refused(t, "pile.above", err)
	_, err = ShareStress(0.8, 0)
	refused(t, "pile.notPositive", err)
}
