package pile

import (
	"strconv"
	"strings"

	"gaugewright/calc/quantity"
)

// steelGrades are the grades with figures in calc/basis, and steelBands the
// upper ends of their bands of thickness [mm].
var (
	steelGrades = []string{"S235", "S275", "S355", "S450"}
	steelBands  = []int{16, 40, 63, 80, 100}
)

// SteelFigure returns the id in calc/basis of the yield strength of a grade at
// a thickness: that of the thickest part that carries, the wall of a tube, the
// flange of an H section.
//
// grade: S235, S275, S355 or S450, alone or with its quality (JR, J0, J2, K2),
// H for hollow sections and the delivery condition (+AR, +N, +M), with or
// without spaces; thickness [m], above zero, at most 0.100 m. The error is an
// [*InputError] with the code "pile.gradeUnknown" or "pile.above".
// Source: EN 10025-2:2004, Table 7, S450 for long products only. EN 1993-1-1
// Table 3.1 has two coarser bands, up to 40 and 80 mm; EN 10210-1 and EN
// 10219-1 print the same as here for hollow sections up to 40 mm (both from
// memory). Not covered: fine-grain and weathering steels, steels for sheet
// piles and for line pipe: type their yield strength.
func SteelFigure(grade string, thickness quantity.Length) (string, error) {
	t := length("t", thickness, "0.0125 m")
	if err := first(t.positive(), t.within(0, float64(steelBands[len(steelBands)-1])/1000)); err != nil {
		return "", err
	}
	name := plain(grade)
	for _, known := range steelGrades {
		rest, ok := strings.CutPrefix(name, known)
		if !ok || !steelQuality(rest) {
			continue
		}
		for _, band := range steelBands {
			if float64(thickness) <= float64(band)/1000 {
				return "steel." + known + "." + strconv.Itoa(band), nil
			}
		}
	}
	return "", &InputError{Code: "pile.gradeUnknown", Text: grade, Allowed: strings.Join(steelGrades, ", "), Example: "S355"}
}

// steelQuality says whether what follows a grade leaves its yield strength.
func steelQuality(rest string) bool {
	rest, condition, _ := strings.Cut(rest, "+")
	switch condition {
	case "", "AR", "N", "M":
	default:
		return false
	}
	switch strings.TrimSuffix(rest, "H") {
	case "", "JR", "J0", "J2", "K2":
		return true
	}
	return false
}
