package quantity_test

import (
	"encoding/csv"
	"math"
	"math/big"
	"math/rand"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/basis"
	"gaugewright/calc/published"
	. "gaugewright/calc/quantity"
)

// The factors of testdata/units.csv are exact fractions of SI units, worked out
// from the definitions; beside them stand the digits that NIST SP 811 prints.
// The source stands in the file. The coherent units here are kN, kPa, m and t.
func TestUnitsAgainstExactFractions(t *testing.T) {
	file, err := os.Open("../../testdata/units.csv")
	require.NoError(t, err)
	defer file.Close()
	r := csv.NewReader(file)
	r.Comment, r.FieldsPerRecord = '#', -1
	rows, err := r.ReadAll()
	require.NoError(t, err)

	ours := map[string]string{
		"tf (metric tonne-force)": "tf", "kip": "kip", "tonf US short (2000 lbf)": "tonf-US",
		"tonf UK long (2240 lbf)": "tonf-UK", "kPa": "kPa", "MPa = N/mm2": "MPa", "bar": "bar",
		"kgf/cm2 = technical atmosphere at": "kgf/cm2", "psi (lbf/in2)": "psi", "in": "in", "ft": "ft",
		"lb": "lb", "t (tonne)": "t", "ton short": "ton-US", "ton long": "ton-UK",
	}
	definitions := published.Worked("exact fractions from g_n, the international yard and pound")
	nist := published.Source{Document: "NIST SP 811, 2008", Place: "appendix B", Mark: basis.Seen}
	thousandth := big.NewRat(1, 1000)
	seen := 0
	for _, row := range rows[1:] {
		symbol, known := ours[row[0]]
		if !known {
			continue
		}
		seen++
		want, ok := new(big.Rat).SetString(row[4])
		require.True(t, ok, row[4])
		u := Must(symbol)
		if u.Dim != Lengths {
			want.Mul(want, thousandth) // N to kN, Pa to kPa, kg to t
		}
		num, den := u.Factor()
		n, _ := new(big.Float).SetFloat64(num).Int(nil)
		d, _ := new(big.Float).SetFloat64(den).Int(nil)
		published.CheckText(t, definitions, symbol, want.String(), new(big.Rat).SetFrac(n, d).String())

		// "4.448 222 E+03" of SI units; other cells say how it is made up.
		if printed := row[5]; printed != "" && !strings.HasPrefix(printed, "(") {
			si := u.Coherent(1)
			if u.Dim != Lengths {
				si *= 1000
			}
			published.Check(t, nist, symbol+" in SI units", printed, si, published.Printed)
		}
	}
	assert.Equal(t, len(ours), seen, "every row that we use is in the file")
}

// A moment is a force times a length: its factors are products of exact
// factors that are checked above.
func TestUnitsOfMoments(t *testing.T) {
	ratio := func(symbol string) *big.Rat {
		num, den := Must(symbol).Factor()
		n, _ := new(big.Float).SetFloat64(num).Int(nil)
		d, _ := new(big.Float).SetFloat64(den).Int(nil)
		return new(big.Rat).SetFrac(n, d)
	}
	for symbol, of := range map[string][2]string{"kNm": {"kN", "m"}, "MNm": {"MN", "m"}, "tfm": {"tf", "m"}, "kip-ft": {"kip", "ft"}} {
		want := new(big.Rat).Mul(ratio(of[0]), ratio(of[1]))
		assert.Zero(t, want.Cmp(ratio(symbol)), "%s: want %s", symbol, want)
	}
	assert.Equal(t, 4, len(Units(Moments)))
}

func TestGravityIsTheStandardValue(t *testing.T) {
	cgpm := published.Source{Document: "NIST SP 811, 2008", Place: "appendix B.8, 3rd CGPM 1901", Mark: basis.Seen}
	published.Check(t, cgpm, "standard acceleration of free fall [m/s2]", "9.80665", Gravity, published.Exact)
	assert.InDelta(t, Gravity, Must("tf").Coherent(1), 1e-15)
}

func TestConversionThereAndBack(t *testing.T) {
	rnd := rand.New(rand.NewSource(1))
	for _, d := range []Dimension{Forces, Pressures, Lengths, Masses, Times, Areas, Moments, LineMasses, Dimensionless} {
		for _, u := range Units(d) {
			for range 200 {
				x := math.Exp(rnd.Float64()*20 - 10)
				assert.InEpsilon(t, x, u.From(u.Coherent(x)), 1e-15, u.Symbol)
			}
		}
	}
}

func TestRounding(t *testing.T) {
	for _, c := range []struct{ x, step, up, down float64 }{
		{29.4, 0.2, 147 * 0.2, 147 * 0.2}, // the quotient is 146.99999999999997 in float64
		{14.8265, 0.5, 15.0, 14.5},
		{14.483, 0.5, 14.5, 14.0},
		{15, 0.5, 15, 15},
		{0, 0.5, 0, 0},
		{-0.3, 0.5, 0, -0.5},
		{1.0000001, 1, 2, 1},
	} {
		assert.InDelta(t, c.up, RoundUp(c.x, c.step), 1e-12, "%v up to %v", c.x, c.step)
		assert.InDelta(t, c.down, RoundDown(c.x, c.step), 1e-12, "%v down to %v", c.x, c.step)
	}
}

func TestRoundingProperties(t *testing.T) {
	rnd := rand.New(rand.NewSource(2))
	for range 20000 {
		step := []float64{0.01, 0.02, 0.05, 0.1, 0.2, 0.25, 0.5, 1, 2, 5, 10, 50}[rnd.Intn(12)]
		x := rnd.Float64() * 1000 * step
		up, down := RoundUp(x, step), RoundDown(x, step)
		require.GreaterOrEqual(t, up, x-2*Slack*step)
		require.Less(t, up, x+step)
		require.LessOrEqual(t, down, x+2*Slack*step)
		require.Greater(t, down, x-step)
		n := float64(rnd.Intn(2000))
		require.Equal(t, n, Divisions(n*step, step, true), "a multiple of %v is itself", step)
		require.Equal(t, n, Divisions(n*step, step, false), "a multiple of %v is itself", step)
	}
}

func TestParseStated(t *testing.T) {
	s, err := ParseStated("120 tf", Forces)
	require.NoError(t, err)
	assert.InDelta(t, 1176.798, s.Value, 1e-12)
	assert.Equal(t, "120 tf", s.Text())

	s, err = ParseStated("-8.350 m", Lengths)
	require.NoError(t, err)
	assert.Equal(t, -8.35, s.Value)
	assert.Equal(t, "-8.350 m", s.Text(), "digit for digit")
	assert.Equal(t, 3, s.Decimals())

	s, err = ParseStated("75 %", Dimensionless)
	require.NoError(t, err)
	assert.Equal(t, 0.75, s.Value)

	s, err = ParseStated("0.95", Dimensionless)
	require.NoError(t, err)
	assert.Equal(t, 0.95, s.Value)

	for text, code := range map[string]string{
		"": "stated.grammar", "900": "stated.unit", "900kN": "stated.grammar", "900  kN": "stated.unit",
		"900 ": "stated.grammar", "9e2 kN": "stated.grammar", "+900 kN": "stated.grammar", "900, kN": "stated.grammar",
		".5 kN": "stated.grammar", "5. kN": "stated.grammar", "900 kn": "stated.unit", "900 MPa": "stated.dimension",
		"900 ton": "stated.unit", "NaN kN": "stated.grammar", "1234567890123456789 kN": "stated.grammar", "9\u00a0kN": "stated.grammar",
	} {
		_, err := ParseStated(text, Forces)
		var te *TextError
		require.ErrorAs(t, err, &te, text)
		assert.Equal(t, code, te.Code, "%q", text)
	}
}

func TestReadTyped(t *testing.T) {
	kN, m := Must("kN"), Must("m")
	for _, c := range []struct {
		text string
		d    Dimension
		unit Unit
		sign DecimalSign
		want string // stated text, or "!" and the code
	}{
		{"900", Forces, kN, NotAsked, "900 kN"},
		{" 900,0 ", Forces, kN, NotAsked, "900.0 kN"},
		{"0,5", Lengths, m, NotAsked, "0.5 m"},
		{"0,500", Lengths, m, NotAsked, "0.500 m"}, // just 0 before the comma: no thousands are written so
		{"120 tf", Forces, kN, NotAsked, "120 tf"},
		{"120tf", Forces, kN, NotAsked, "120 tf"},
		{"120 TF", Forces, kN, NotAsked, "120 tf"},
		{"1.250", Lengths, m, NotAsked, "1.250 m"},
		{"1,250", Lengths, m, NotAsked, "!typed.separator"},
		{"1,250", Lengths, m, Comma, "1.250 m"},
		{"1,250", Lengths, m, Point, "1250 m"},
		{"1.250", Lengths, m, Comma, "!typed.mixed"},
		{"12345,678", Lengths, m, NotAsked, "12345.678 m"},
		{"1.234,5", Forces, kN, NotAsked, "!typed.mixed"},
		{"1,234.5", Forces, kN, NotAsked, "!typed.mixed"},
		{"1.234.567", Forces, kN, Point, "!typed.mixed"},
		{"1 200", Forces, kN, Point, "!typed.number"},
		{"\u22128,35", Lengths, m, NotAsked, "-8.35 m"},
		{"- 8.35", Lengths, m, NotAsked, "-8.35 m"},
		{"8\u00a0m", Lengths, m, NotAsked, "8 m"},
		{".5", Lengths, m, NotAsked, "0.5 m"},
		{"5.", Lengths, m, NotAsked, "5 m"},
		{"150 kg/cm2", Pressures, Must("MPa"), NotAsked, "150 kgf/cm2"},
		{"15 N/mm2", Pressures, Must("bar"), NotAsked, "15 MPa"},
		{"180 tonnes", Masses, Must("t"), NotAsked, "180 t"},
		{"90 t", Forces, kN, NotAsked, "!typed.ton"},
		{"90 ton", Forces, kN, NotAsked, "!typed.ton"},
		{"90 tonf", Forces, kN, NotAsked, "!typed.ton"},
		{"90 Tons", Masses, Must("t"), NotAsked, "!typed.ton"},
		{"90 ton", Lengths, m, NotAsked, "!typed.dimension"},
		{"15 bar", Forces, kN, NotAsked, "!typed.dimension"},
		{"15 furlong", Lengths, m, NotAsked, "!typed.unit"},
		{"1e3", Forces, kN, NotAsked, "!typed.unit"},
		{"--5", Forces, kN, NotAsked, "!typed.number"},
		{"5-3", Forces, kN, NotAsked, "!typed.number"},
		{"kN", Forces, kN, NotAsked, "!typed.number"},
		{"2.0", Dimensionless, Must(""), NotAsked, "2.0"},
		{"75%", Dimensionless, Must(""), NotAsked, "75 %"},
		{"<img onerror>", Forces, kN, NotAsked, "!typed.number"},
	} {
		s, ok, err := ReadTyped(c.text, c.d, c.unit, c.sign)
		if code, bad := strings.CutPrefix(c.want, "!"); bad {
			var te *TextError
			require.ErrorAs(t, err, &te, "%q", c.text)
			assert.Equal(t, code, te.Code, "%q", c.text)
			assert.NotEmpty(t, te.Allowed+te.Example+strings.Join(te.Offers, ""), "%q says what is allowed", c.text)
			continue
		}
		require.NoError(t, err, "%q", c.text)
		require.True(t, ok, "%q", c.text)
		assert.Equal(t, c.want, s.Text(), "%q", c.text)
		again, err := ParseStated(s.Text(), c.d)
		require.NoError(t, err)
		assert.Equal(t, s, again)
	}
}

func TestBlankIsNotZero(t *testing.T) {
	for _, text := range []string{"", "  ", "\u00a0", "\t\n"} {
		_, ok, err := ReadTyped(text, Forces, Must("kN"), NotAsked)
		assert.NoError(t, err)
		assert.False(t, ok)
	}
	s, ok, err := ReadTyped("0", Forces, Must("kN"), NotAsked)
	require.NoError(t, err)
	assert.True(t, ok)
	assert.Equal(t, "0 kN", s.Text())
}

func TestBothMeaningsAreOffered(t *testing.T) {
	for text, want := range map[string][]string{
		"1,200":     {"1.200 kN", "1200 kN"},
		"1.234,5":   {"1234.5 kN", "1.2345 kN"},
		"1,234.5":   {"1234.5 kN", "1.2345 kN"},
		"1.234.567": {"1234567 kN"},
		"120 ton":   {"120 tf", "120 tonf-US", "120 tonf-UK"},
	} {
		_, _, err := ReadTyped(text, Forces, Must("kN"), NotAsked)
		var te *TextError
		require.ErrorAs(t, err, &te, text)
		assert.Equal(t, want, te.Offers, text)
		for _, offer := range te.Offers {
			_, err := ParseStated(offer, Forces)
			assert.NoError(t, err, "an offer can be taken as it stands")
		}
	}
}

func TestPrint(t *testing.T) {
	assert.Equal(t, "1820.7", Print(1820.7363, 1, NotAsked))
	assert.Equal(t, "1820,7", Print(1820.7363, 1, Comma))
	assert.Equal(t, "0.0", Print(-0.04, 1, NotAsked))
	assert.Equal(t, "15.0", PrintIn(15000, Must("MPa"), 1, Point))
	assert.Equal(t, "12,60", Localise("12.60", Comma))
}

func TestDimensions(t *testing.T) {
	assert.Equal(t, Forces, Masses.Times(Accelerations))
	assert.Equal(t, Pressures, Forces.Over(Areas))
	assert.Equal(t, Forces, Pressures.Times(Areas))
	assert.Equal(t, "kPa", Pressures.Coherent())
	assert.Equal(t, "m t2", Dimension{L: 1, M: 2}.Coherent())
	root, ok := Areas.Root()
	assert.True(t, ok)
	assert.Equal(t, Lengths, root)
	_, ok = Lengths.Root()
	assert.False(t, ok)
}

func FuzzReadTyped(f *testing.F) {
	for _, s := range []string{"900", "1,200", "1.234,5", "120 tf", "-8.35 m", "90 ton", "", "\u22121", "<img>"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, sign := range []DecimalSign{NotAsked, Point, Comma} {
			s, ok, err := ReadTyped(text, Forces, Must("kN"), sign)
			if err != nil || !ok {
				continue
			}
			again, err := ParseStated(s.Text(), Forces)
			if err != nil || again != s {
				t.Fatalf("%q reads as %q, which is not a stated quantity: %v", text, s.Text(), err)
			}
		}
	})
}
