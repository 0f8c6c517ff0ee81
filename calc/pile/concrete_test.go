package pile_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/basis"
	. "gaugewright/calc/pile"
	"gaugewright/calc/published"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

var concreteTable = published.Source{Document: "EN 1992-1-1, 2004", Place: "Table 3.1", Mark: basis.SecondHand}

func TestClassesAgainstTheTable(t *testing.T) {
	rows, modulus := table(t, "concrete_classes.csv", 14), table(t, "concrete_modulus.csv", 14)
	classes := Classes()
	formula := published.Worked("modulus of concrete by 22 (f_cm/10)^0.3, recomputed")
	require.Len(t, classes, len(rows))
	for i, row := range rows {
		c := classes[i]
		published.Check(t, concreteTable, c.Name+", f_ck [MPa]", row[0], float64(c.Cylinder)/1000, published.Exact)
		published.Check(t, concreteTable, c.Name+", f_ck,cube [MPa]", row[1], float64(c.Cube)/1000, published.Exact)
		assert.Equal(t, "C"+row[0]+"/"+row[1], c.Name)
		read, err := ConcreteClass(" c " + c.Name[1:3] + " / " + c.Name[4:])
		require.NoError(t, err)
		assert.Equal(t, c, read)

		mean, err := MeanStrength(c.Cylinder)
		require.NoError(t, err)
		published.Check(t, concreteTable, c.Name+", f_cm [MPa]", row[2], float64(mean)/1000, published.Exact)
		hold(t, MeanStrengthRule, float64(mean), float64(c.Cylinder), figure("concrete.meanMargin"))
		E, err := ConcreteStiffness(mean)
		require.NoError(t, err)
		published.Check(t, concreteTable, c.Name+", E_cm [GPa]", row[3], float64(E)/1e6, published.Printed)
		assert.Equal(t, []string{row[0], row[2], row[3]}, []string(modulus[i][:3]), "both files hold the same table")
		published.Check(t, formula, c.Name+", E_cm [GPa]", modulus[i][3], float64(E)/1e6, published.Printed)
		hold(t, ConcreteStiffnessRule, float64(E), figure("concrete.stiffness.base"), float64(mean), figure("concrete.stiffness.strength"))
	}
	for text, code := range map[string]string{
		"C40": "pile.classHalf", "40": "pile.classHalf",
		"C40/55": "pile.classUnknown", "": "pile.classUnknown", "B500": "pile.classUnknown", "C 28/35": "pile.classUnknown",
	} {
		_, err := ConcreteClass(text)
		var e *InputError
		require.ErrorAs(t, err, &e)
		assert.Equal(t, code, e.Code, "%q", text)
	}
}

func TestCubesBecomeCylinders(t *testing.T) {
	convert := func(cube quantity.Pressure) quantity.Pressure {
		c, err := FromCube(cube)
		require.NoError(t, err)
		inputs := c.Inputs(working.In{V: float64(cube)})
		values := make([]float64, len(inputs))
		for i, in := range inputs {
			values[i] = in.V
			if i > 0 {
				assert.Equal(t, basis.Figure(in.Ref[len("basis:"):]), in.V)
			}
		}
		hold(t, c.Rule(), float64(c.Cylinder), values...)
		return c.Cylinder
	}
	for _, c := range Classes() {
		assert.Equal(t, c.Cylinder, convert(c.Cube))
	}
	// By hand between C30/37 and C35/45: 30 + 5 x 3/8 = 31.875 MPa.
	published.Check(t, byHand, "cylinder strength of a cube of 40 MPa [kPa]", "31875", float64(convert(40000)), published.Within(1e-9, ""))

	previous := quantity.Pressure(0)
	for cube := quantity.Pressure(15000); cube <= 105000; cube += 713 {
		f := convert(cube)
		require.Greater(t, f, previous)
		require.Less(t, f, cube, "a cube is stronger than a cylinder")
		previous = f
	}
	_, err := FromCube(14999)
	assert.Equal(t, 15000.0, refused(t, "pile.below", err).Limit)
	_, err = FromCube(105001)
	assert.Equal(t, 105000.0, refused(t, "pile.above", err).Limit)
	_, err = FromCube(quantity.Pressure(math.NaN()))
	refused(t, "pile.notFinite", err)
}

// beta_cc to two decimals at 3.0, 7 and 14 days for the three kinds of cement
// as handbooks to EN 1992-1-1 print them (from memory; 3 days taken just above
// the end of the range).
func TestShareOfStrengthAgainstHandbooks(t *testing.T) {
	handbooks := published.Source{Document: "handbooks to EN 1992-1-1", Place: "beta_cc", Mark: basis.Memory}
	for hardening, want := range map[string][3]string{"slow": {"0.46", "0.68", "0.85"}, "normal": {"0.60", "0.78", "0.90"}, "rapid": {"0.66", "0.82", "0.92"}} {
		for i, age := range []Days{3.0000001, 7, 14} {
			a, err := StrengthAt(40000, hardening, age)
			require.NoError(t, err)
			published.Check(t, handbooks, hardening+" at "+[]string{"3", "7", "14"}[i]+" days", want[i], float64(a.Share), published.Printed)
		}
	}
}

func TestStrengthAtAnAge(t *testing.T) {
	// By hand: C30/37, normal, 7 days: sqrt(28/7) = 2, exp(-0.25) = 0.778801;
	// 0.778801 x 38 = 29.594430, less 8 is 21.594430 MPa.
	a, err := StrengthAt(30000, "normal", 7)
	require.NoError(t, err)
	published.Check(t, byHand, "f_ck of C30/37 at 7 days, normal cement [kPa]", "21594.430", float64(a.Strength), published.Within(1e-3, "six digits on the way"))
	assert.Equal(t, quantity.Pressure(38000), a.Mean)

	for _, hardening := range []string{"slow", "normal", "rapid"} {
		id, err := HardeningFigure(hardening)
		require.NoError(t, err)
		for _, c := range Classes() {
			previous := quantity.Pressure(0)
			for age := Days(3.05); age < 40; age += 0.35 {
				a, err := StrengthAt(c.Cylinder, hardening, age)
				require.NoError(t, err)
				require.GreaterOrEqual(t, a.Strength, previous, "older is never weaker")
				require.LessOrEqual(t, a.Strength, c.Cylinder, "nothing is gained after 28 days")
				previous = a.Strength
			}
			assert.Equal(t, c.Cylinder, previous)
		}
		for _, age := range []Days{3.2, 5, 7, 10, 14, 27, 28, 56, 1000} {
			a, err := StrengthAt(40000, hardening, age)
			require.NoError(t, err)
			s := step(t, AgeShareRule, float64(a.Share), figure(id), float64(age))
			if age < FullAge {
				s.Inputs[1].V *= 1.01
				difference, err := s.Check()
				require.NoError(t, err)
				assert.Greater(t, difference, 1e-4)
			}
			hold(t, AgedStrengthRule, float64(a.Strength), float64(a.Share), float64(a.Mean), figure("concrete.meanMargin"))
		}
	}
	// Slower cement is never stronger before 28 days.
	for age := Days(3.5); age < 28; age++ {
		var f [3]quantity.Pressure
		for i, hardening := range []string{"slow", "normal", "rapid"} {
			a, err := StrengthAt(50000, hardening, age)
			require.NoError(t, err)
			f[i] = a.Strength
		}
		assert.Less(t, f[0], f[1])
		assert.Less(t, f[1], f[2])
	}

	for _, age := range []Days{3, 2.9, 0, -1} {
		_, err = StrengthAt(40000, "normal", age)
		assert.Equal(t, 3.0, refused(t, "pile.tooYoung", err).Limit)
	}
	_, err = StrengthAt(40000, "normal", Days(math.NaN()))
	refused(t, "pile.notFinite", err)
	_, err = StrengthAt(40000, "", 7)
	var e *InputError
	require.ErrorAs(t, err, &e)
	assert.Equal(t, "pile.hardeningUnknown", e.Code, "a blank is not guessed")
	_, err = StrengthAt(11000, "normal", 7)
	refused(t, "pile.below", err)
	_, err = StrengthAt(91000, "normal", 7)
	refused(t, "pile.above", err)
}

// EN 1992-1-1 3.1.3 (3): E_cm(t) = (f_cm(t)/f_cm)^0.3 E_cm. The modulus from
// the mean strength of the age is the same.
func TestStiffnessOfYoungConcrete(t *testing.T) {
	for _, c := range Classes() {
		for _, age := range []Days{4, 7, 14, 28} {
			a, err := StrengthAt(c.Cylinder, "rapid", age)
			require.NoError(t, err)
			young, err := ConcreteStiffness(a.Strength + 8000)
			require.NoError(t, err)
			old, err := ConcreteStiffness(a.Mean)
			require.NoError(t, err)
			assert.InEpsilon(t, float64(old)*math.Pow(float64(a.Share), 0.3), float64(young), 1e-12)
		}
	}
	_, err := ConcreteStiffness(98001)
	refused(t, "pile.above", err)
	_, err = ConcreteStiffness(0)
	refused(t, "pile.notPositive", err)
}

func TestStressLimitsOfConcrete(t *testing.T) {
	alpha, gamma := quantity.Ratio(figure("concrete.pressing.alpha")), quantity.Ratio(figure("concrete.pressing.gamma"))
	c := quantity.Ratio(figure("concrete.driving.share"))
	// By hand: 0.85 x 48/1.2 = 34 MPa, less 6 is 28; 0.8 x 48 - 6 = 32.4 MPa.
	s, err := PressingStress(alpha, 48000, gamma, 6000)
	require.NoError(t, err)
	published.Check(t, byHand, "0.85 x 48/1.2 - 6 MPa [kPa]", "28000", float64(s), published.Within(1e-9, ""))
	hold(t, PressingStressRule, float64(s), float64(alpha), 48000, float64(gamma), 6000)
	d, err := DrivingStress(c, 48000, 6000)
	require.NoError(t, err)
	published.Check(t, byHand, "0.8 x 48 - 6 MPa [kPa]", "32400", float64(d), published.Within(1e-9, ""))
	hold(t, DrivingStressRule, float64(d), float64(c), 48000, 6000)

	rnd := rand.New(rand.NewSource(11))
	for range 2000 {
		f, pre := quantity.Pressure(15000+rnd.Float64()*80000), quantity.Pressure(rnd.Float64()*9000)
		low, err := PressingStress(alpha, f, gamma, pre)
		require.NoError(t, err)
		high, err := PressingStress(alpha, f*1.01, gamma, pre)
		require.NoError(t, err)
		require.Greater(t, high, low, "stronger never lowers")
		more, err := PressingStress(alpha, f, gamma, pre+100)
		require.NoError(t, err)
		require.Less(t, more, low, "prestress never raises")
		driving, err := DrivingStress(c, f, pre)
		require.NoError(t, err)
		require.Greater(t, driving, low, "0.8 against 0.7083")
		require.InEpsilon(t, float64(f)*0.85/1.2, float64(low+pre), 1e-12, "with the prestress it is the whole stress")
	}

	_, err = PressingStress(alpha, 12000, gamma, 8500)
	assert.InDelta(t, 8500, refused(t, "pile.prestressTooHigh", err).Limit, 1e-9)
	_, err = DrivingStress(c, 12000, -1)
	refused(t, "pile.negative", err)
	_, err = PressingStress(1.1, 12000, gamma, 0)
	refused(t, "pile.above", err)
	_, err = PressingStress(alpha, 12000, 0.9, 0)
	refused(t, "pile.below", err)
	_, err = PressingStress(alpha, 0, gamma, 0)
	refused(t, "pile.notPositive", err)
	_, err = DrivingStress(c, 12000, quantity.Pressure(math.Inf(1)))
	refused(t, "pile.notFinite", err)
}
