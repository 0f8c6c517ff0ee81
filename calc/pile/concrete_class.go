package pile

import (
	"strings"

	"gaugewright/calc/basis"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Class is a strength class of concrete: its name and the characteristic
// strengths of a cylinder and of a cube [kPa] that its name states.
type Class struct {
	Name           string // "C40/50"
	Cylinder, Cube quantity.Pressure
}

// CylinderFigure and CubeFigure are the ids of the class in calc/basis.
func (c Class) CylinderFigure() string { return "concrete." + c.Name + ".cylinder" }

// CubeFigure: see [Class.CylinderFigure].
func (c Class) CubeFigure() string { return "concrete." + c.Name + ".cube" }

// classNames are the classes of EN 1992-1-1 Table 3.1 in rising order.
var classNames = []string{"C12/15", "C16/20", "C20/25", "C25/30", "C30/37", "C35/45", "C40/50", "C45/55", "C50/60",
	"C55/67", "C60/75", "C70/85", "C80/95", "C90/105"}

var classes = func() (list []Class) {
	for _, name := range classNames {
		c := Class{Name: name}
		c.Cylinder = quantity.Pressure(basis.Figure(c.CylinderFigure()))
		c.Cube = quantity.Pressure(basis.Figure(c.CubeFigure()))
		list = append(list, c)
	}
	return list
}()

// Classes returns the classes of EN 1992-1-1 Table 3.1 in rising order.
func Classes() []Class { return append([]Class(nil), classes...) }

// ConcreteClass reads the name of a strength class, "C40/50", with or without
// spaces and in any case of letters. A class with one number is refused,
// because some countries mean the cube by it and others the cylinder; so are
// pairs that Table 3.1 does not print. The error is an [*InputError] with the
// code "pile.classHalf" or "pile.classUnknown".
// Source: EN 1992-1-1:2004, Table 3.1.
func ConcreteClass(text string) (Class, error) {
	name := plain(text)
	for _, c := range classes {
		if c.Name == name {
			return c, nil
		}
	}
	e := &InputError{Code: "pile.classUnknown", Text: text, Allowed: strings.Join(classNames, ", "), Example: "C40/50"}
	if digits := strings.TrimPrefix(name, "C"); digits != "" && strings.Trim(digits, "0123456789") == "" {
		e.Code = "pile.classHalf"
	}
	return Class{}, e
}

// plain takes out blanks and the case of letters.
func plain(text string) string { return strings.ToUpper(strings.Join(strings.Fields(text), "")) }

// Conversion turns a strength of cubes into that of cylinders between two
// classes. Low and High are the same class where the cube strength is printed.
type Conversion struct {
	Cylinder  quantity.Pressure
	Low, High Class
}

// FromCube returns the strength of a cylinder for a strength of a 150 mm cube,
//
//	f_ck = f_1 + (f_2 - f_1) (f_cube - c_1)/(c_2 - c_1)
//
// where (f_1, c_1) and (f_2, c_2) are the neighbouring pairs of cylinder and
// cube in EN 1992-1-1 Table 3.1. f_cube must be from 15 to 105 MPa (here in
// kPa), the ends of the table; else the error is an [*InputError]. Source: the
// pairs by the table; the straight line between them is our own choice. Not
// covered: cubes of 100 or 200 mm, cores. A mean of tests is not a
// characteristic value, and converting does not make it one.
func FromCube(cube quantity.Pressure) (Conversion, error) {
	lowest, highest := classes[0], classes[len(classes)-1]
	if err := stress("f_cube", cube, "50 MPa").within(float64(lowest.Cube), float64(highest.Cube)); err != nil {
		return Conversion{}, err
	}
	i := 0
	for classes[i].Cube < cube {
		i++
	}
	high := classes[i]
	if high.Cube == cube {
		return Conversion{high.Cylinder, high, high}, nil
	}
	low := classes[i-1]
	share := float64(cube-low.Cube) / float64(high.Cube-low.Cube)
	return Conversion{low.Cylinder + quantity.Pressure(float64(high.Cylinder-low.Cylinder)*share), low, high}, nil
}

// Rule is the rule by which the conversion is shown; its inputs are
// [Conversion.Inputs]. Of a printed pair it is the ratio of the pair, so that
// the step hangs on the stated cube strength all the same.
func (c Conversion) Rule() working.Rule {
	f1 := working.Symbol{Name: "f_1", Dim: quantity.Pressures, Key: "cylinderBelow"}
	c1 := working.Symbol{Name: "c_1", Dim: quantity.Pressures, Key: "cubeBelow"}
	r := working.Rule{Key: "pile.concrete.fromCube", Symbol: "f_ck", Dim: quantity.Pressures, Decimals: 1, Basis: "concrete.fromCube",
		Formula: "f_1 + (f_2 - f_1)*(f_cube - c_1)/(c_2 - c_1)"}
	cube := working.Symbol{Name: "f_cube", Dim: quantity.Pressures, Key: "cubeStrength"}
	if c.Low == c.High {
		r.Formula = "f_cube*f_1/c_1"
		r.Inputs = []working.Symbol{cube, f1, c1}
		return r
	}
	r.Inputs = []working.Symbol{cube, f1, c1,
		{Name: "f_2", Dim: quantity.Pressures, Key: "cylinderAbove"},
		{Name: "c_2", Dim: quantity.Pressures, Key: "cubeAbove"}}
	return r
}

// Inputs are the inputs of [Conversion.Rule] in its order: f_cube, f_1, c_1
// and, between two classes, f_2, c_2.
func (c Conversion) Inputs(cube working.In) []working.In {
	list := []working.In{cube}
	of := []Class{c.Low, c.High}
	if c.Low == c.High {
		of = of[:1]
	}
	for _, k := range of {
		list = append(list, working.In{V: float64(k.Cylinder), Ref: "basis:" + k.CylinderFigure()},
			working.In{V: float64(k.Cube), Ref: "basis:" + k.CubeFigure()})
	}
	return list
}
