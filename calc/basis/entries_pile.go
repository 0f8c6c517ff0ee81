package basis

import "gaugewright/calc/quantity"

// Documents of the entries of piles.
const (
	eurocode2 = "EN 1992-1-1"
	eurocode3 = "EN 1993-1-1"
	textbooks = "textbooks of the strength of materials"
)

// pileEntries are figures and formulas for the pile while it is pressed. What
// is marked as second-hand was read on public pages that quote the document.
var pileEntries = join(concreteFigures(), concreteEntries, steelFigures(), steelEntries, timberFigures(), timberEntries, strutEntries)

// concreteFigures are the two strengths of each class of concrete.
func concreteFigures() []Entry {
	var list []Entry
	for _, c := range [][2]string{{"12", "15"}, {"16", "20"}, {"20", "25"}, {"25", "30"}, {"30", "37"}, {"35", "45"}, {"40", "50"},
		{"45", "55"}, {"50", "60"}, {"55", "67"}, {"60", "75"}, {"70", "85"}, {"80", "95"}, {"90", "105"}} {
		name := "C" + c[0] + "/" + c[1]
		for i, specimen := range []string{"cylinder", "cube"} {
			list = append(list, Entry{ID: "concrete." + name + "." + specimen, Value: c[i] + " MPa", Dim: quantity.Pressures,
				Document: eurocode2, Edition: "2004", Clause: "Table 3.1, class " + name + ", strength of a " + specimen, Mark: SecondHand})
		}
	}
	return list
}

var concreteEntries = []Entry{
	{ID: "concrete.meanMargin", Value: "8 MPa", Dim: quantity.Pressures, Document: eurocode2, Edition: "2004",
		Clause: "Table 3.1, mean strength above characteristic strength", Mark: SecondHand},
	{ID: "concrete.hardening.slow", Value: "0.38", Dim: quantity.Dimensionless, Document: eurocode2, Edition: "2004",
		Clause: "3.1.2 (6), cement of class S: CEM 32,5 N", Mark: SecondHand},
	{ID: "concrete.hardening.normal", Value: "0.25", Dim: quantity.Dimensionless, Document: eurocode2, Edition: "2004",
		Clause: "3.1.2 (6), cement of class N: CEM 32,5 R and 42,5 N", Mark: SecondHand},
	{ID: "concrete.hardening.rapid", Value: "0.20", Dim: quantity.Dimensionless, Document: eurocode2, Edition: "2004",
		Clause: "3.1.2 (6), cement of class R: CEM 42,5 R, 52,5 N and 52,5 R", Mark: SecondHand},
	{ID: "concrete.stiffness.base", Value: "22000 MPa", Dim: quantity.Pressures, Document: eurocode2, Edition: "2004",
		Clause: "Table 3.1, modulus of elasticity at the mean strength below", Mark: Memory},
	{ID: "concrete.stiffness.strength", Value: "10 MPa", Dim: quantity.Pressures, Document: eurocode2, Edition: "2004",
		Clause: "Table 3.1, mean strength to which the modulus above belongs", Mark: Memory},
	{ID: "concrete.pressing.alpha", Value: "0.85", Dim: quantity.Dimensionless, Document: own, Edition: none,
		Clause: "strength of the concrete in the pile over that of a cylinder, under a load of minutes to hours", Mark: Own},
	{ID: "concrete.pressing.gamma", Value: "1.2", Dim: quantity.Dimensionless, Document: own, Edition: none,
		Clause: "partial factor for a short load that is watched while it acts", Mark: Own},
	{ID: "concrete.driving.share", Value: "0.8", Dim: quantity.Dimensionless, Document: "EN 12699", Edition: "2000",
		Clause: "7.7, stress while driving over the characteristic strength, prestress included", Mark: Seen},

	{ID: "concrete.fromCube", Value: "f_ck = f_1 + (f_2 - f_1) (f_cube - c_1)/(c_2 - c_1)", Formula: true, Document: own, Edition: none,
		Clause: "straight line between the pairs of cylinder and cube in EN 1992-1-1 Table 3.1", Mark: Own},
	{ID: "concrete.mean", Value: "f_cm = f_ck + 8 MPa", Formula: true, Document: eurocode2, Edition: "2004", Clause: "Table 3.1", Mark: SecondHand},
	{ID: "concrete.age", Value: "f_ck(t) = exp(s (1 - sqrt(28/t))) f_cm - 8 MPa", Formula: true, Document: eurocode2, Edition: "2004",
		Clause: "3.1.2 (5) and (6), for 3 < t < 28 days; from 28 days on f_ck", Mark: SecondHand},
	{ID: "concrete.stiffness", Value: "E_cm = 22 GPa (f_cm/10 MPa)^0.3", Formula: true, Document: eurocode2, Edition: "2004",
		Clause: "Table 3.1, quartzite aggregate", Mark: Memory},
	{ID: "concrete.pressing", Value: "sigma_lim = 0.85 f_ck/1.2 - f_pe", Formula: true, Document: own, Edition: none,
		Clause: "stress that pressing may add to a concrete pile", Mark: Own},
	{ID: "concrete.driving", Value: "sigma_lim = 0.8 f_ck - f_pe", Formula: true, Document: "EN 12699", Edition: "2000",
		Clause: "7.7, stresses while driving, prestress included", Mark: Seen},
}

// steelFigures are the yield strengths of each grade in each band of thickness.
func steelFigures() []Entry {
	bands := [...]string{"16", "40", "63", "80", "100"}
	var list []Entry
	for _, g := range []struct {
		grade string
		yield [len(bands)]string
	}{
		{"S235", [...]string{"235", "225", "215", "215", "215"}},
		{"S275", [...]string{"275", "265", "255", "245", "235"}},
		{"S355", [...]string{"355", "345", "335", "325", "315"}},
		{"S450", [...]string{"450", "430", "410", "390", "380"}},
	} {
		for i, band := range bands {
			list = append(list, Entry{ID: "steel." + g.grade + "." + band, Value: g.yield[i] + " MPa", Dim: quantity.Pressures,
				Document: "EN 10025-2", Edition: "2004", Clause: "Table 7, yield strength of " + g.grade + " up to " + band + " mm", Mark: SecondHand})
		}
	}
	return list
}

var steelEntries = []Entry{
	{ID: "steel.share.low", Value: "0.8", Dim: quantity.Dimensionless, Document: "rules for jacked piles, quoted by others", Edition: "not seen",
		Clause: "stress while pressing over the yield strength", Mark: SecondHand},
	{ID: "steel.share.high", Value: "0.9", Dim: quantity.Dimensionless, Document: "EN 12699", Edition: "2000, recalled",
		Clause: "7.7, stress while driving over the yield strength", Mark: Memory},
	{ID: "steel.stiffness", Value: "210000 MPa", Dim: quantity.Pressures, Document: eurocode3, Edition: "2005",
		Clause: "3.2.6 (1), modulus of elasticity", Mark: SecondHand},
	{ID: "steel.curve.a0", Value: "0.13", Dim: quantity.Dimensionless, Document: eurocode3, Edition: "2005",
		Clause: "Table 6.1, imperfection factor of buckling curve a0", Mark: SecondHand},
	{ID: "steel.curve.a", Value: "0.21", Dim: quantity.Dimensionless, Document: eurocode3, Edition: "2005",
		Clause: "Table 6.1, imperfection factor of buckling curve a", Mark: SecondHand},
	{ID: "steel.curve.b", Value: "0.34", Dim: quantity.Dimensionless, Document: eurocode3, Edition: "2005",
		Clause: "Table 6.1, imperfection factor of buckling curve b", Mark: SecondHand},
	{ID: "steel.curve.c", Value: "0.49", Dim: quantity.Dimensionless, Document: eurocode3, Edition: "2005",
		Clause: "Table 6.1, imperfection factor of buckling curve c", Mark: SecondHand},
	{ID: "steel.curve.d", Value: "0.76", Dim: quantity.Dimensionless, Document: eurocode3, Edition: "2005",
		Clause: "Table 6.1, imperfection factor of buckling curve d", Mark: SecondHand},

	{ID: "steel.stress", Value: "sigma_lim = c f_y", Formula: true, Document: "rules for jacked and driven piles", Edition: "not seen",
		Clause: "a share of the yield strength, 0.8 or 0.9", Mark: SecondHand},
	{ID: "steel.slenderness", Value: "lambda = sqrt(A f_y/N_cr)", Formula: true, Document: eurocode3, Edition: "2005",
		Clause: "6.3.1.2 (1), sections of class 1 to 3", Mark: SecondHand},
	{ID: "steel.reduction", Value: "Phi = 0.5 (1 + alpha (lambda - 0.2) + lambda^2), chi = 1/(Phi + sqrt(Phi^2 - lambda^2)) <= 1", Formula: true,
		Document: eurocode3, Edition: "2005", Clause: "6.3.1.2 (1)", Mark: SecondHand},
}

// timberFigures are the strength and the stiffness along the grain of each
// class. The edition of 2016 has 1 MPa more for C30, D30 and D40 (from memory).
func timberFigures() []Entry {
	var list []Entry
	for _, c := range []struct {
		class, strength, stiffness string
		mark                       Mark
	}{
		{"C16", "17", "5400", Memory}, {"C24", "21", "7400", SecondHand}, {"C30", "23", "8000", SecondHand},
		{"D30", "23", "9200", Memory}, {"D40", "26", "10900", Memory},
	} {
		list = append(list,
			Entry{ID: "timber." + c.class + ".strength", Value: c.strength + " MPa", Dim: quantity.Pressures, Document: "EN 338", Edition: "2009",
				Clause: "Table 1, compression along the grain, f_c,0,k, of " + c.class, Mark: c.mark},
			Entry{ID: "timber." + c.class + ".stiffness", Value: c.stiffness + " MPa", Dim: quantity.Pressures, Document: "EN 338", Edition: "2009",
				Clause: "Table 1, modulus of elasticity along the grain, E_0,05, of " + c.class, Mark: c.mark})
	}
	return list
}

var timberEntries = []Entry{
	{ID: "timber.share", Value: "0.8", Dim: quantity.Dimensionless, Document: "EN 12699", Edition: "2000",
		Clause: "7.7, stress while driving over the characteristic strength along the grain", Mark: Seen},
	{ID: "timber.stress", Value: "sigma_lim = 0.8 f_c,0,k", Formula: true, Document: "EN 12699", Edition: "2000",
		Clause: "7.7, stresses while driving", Mark: Seen},
}

// strutEntries hold for every material.
var strutEntries = []Entry{
	{ID: "buckling.lengthFactor", Value: "1.0", Dim: quantity.Dimensionless, Document: own, Edition: none,
		Clause: "buckling length over free length: the grip and the ground hold the pile sideways, neither keeps it from turning", Mark: Own},
	{ID: "buckling.pitchingFactor", Value: "2.0", Dim: quantity.Dimensionless, Document: own, Edition: none,
		Clause: "while a pile is pitched: the grip keeps the head from turning, the toe stands on the ground and may slip sideways", Mark: Own},

	{ID: "pile.section", Value: "N_0 = A sigma_lim", Formula: true, Document: statics, Edition: none, Clause: "even stress over the section", Mark: Practice},
	{ID: "pile.offAxis", Value: "F_lim = sigma_lim/(1/A + e/W_el)", Formula: true, Document: statics, Edition: none,
		Clause: "straight-line stress over an uncracked section, F/A + F e/W_el = sigma_lim", Mark: Practice},
	{ID: "pile.freeLength", Value: "l = h_g + h_s + z", Formula: true, Document: own, Edition: none,
		Clause: "grip height, stroke left, and the depth that is very soft or pre-bored", Mark: Own},
	{ID: "pile.euler", Value: "N_cr = pi^2 E I/(k l)^2", Formula: true, Document: textbooks, Edition: "recalled",
		Clause: "Euler's load of an ideal strut", Mark: Memory},
	{ID: "pile.combined", Value: "1/N = 1/N_0 + 1/N_cr", Formula: true, Document: textbooks, Edition: "recalled",
		Clause: "Rankine's formula for struts; used for concrete and timber by our own choice", Mark: Own},
	{ID: "pile.weakest", Value: "F_lim = least of all limits entered", Formula: true, Document: own, Edition: none,
		Clause: "a pile stands what its weakest part stands", Mark: Own},
}

func join(tables ...[]Entry) []Entry {
	var list []Entry
	for _, t := range tables {
		list = append(list, t...)
	}
	return list
}
