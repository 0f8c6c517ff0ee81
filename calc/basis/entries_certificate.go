package basis

import "gaugewright/calc/quantity"

const (
	gum        = "JCGM 100"
	regression = "textbooks of regression"
)

// certificateEntries are figures and formulas for certificates of calibration
// and for what they leave in doubt.
var certificateEntries = []Entry{
	{ID: "calibration.tolerance", Value: "0.000000001", Dim: quantity.Dimensionless, Document: own, Edition: none,
		Clause: "the normal equations of a fit hold to this part of the sizes that are added", Mark: Own},
	{ID: "calibration.level", Value: "0.95", Dim: quantity.Dimensionless, Document: gum, Edition: "2008",
		Clause: "6.2.2, level of confidence, two-sided; the value is the usual one", Mark: Memory},
	{ID: "calibration.normalCoverage", Value: "1.959963984540054", Dim: quantity.Dimensionless, Document: gum, Edition: "2008",
		Clause: "Table G.2, last line, 95 %: 1.960; more digits computed", Mark: Memory},
	{ID: "calibration.outlierLevel", Value: "0.05", Dim: quantity.Dimensionless, Document: own, Edition: none,
		Clause: "chance that points without an outlier show one, all points together", Mark: Own},
	{ID: "certificate.significance", Value: "0.05", Dim: quantity.Dimensionless, Document: own, Edition: none,
		Clause: "a test of the fit below this chance is pointed out", Mark: Own},
	{ID: "certificate.slopeMost", Value: "1.00", Dim: quantity.Dimensionless, Document: statics, Edition: none,
		Clause: "load over pressure and area; a ram that pushes gives no more than this, one that is pushed does", Mark: Practice},
	{ID: "certificate.slopeLeast", Value: "0.80", Dim: quantity.Dimensionless, Document: "handbooks of hydraulics", Edition: "recalled",
		Clause: "seal and guide friction of cylinders, 5 to 20 per cent of the load", Mark: Memory},
	{ID: "certificate.unitsMost", Value: "1.25", Dim: quantity.Dimensionless, Document: own, Edition: none,
		Clause: "a slope above this share of theory makes us ask for the units", Mark: Own},
	{ID: "certificate.unitsLeast", Value: "0.50", Dim: quantity.Dimensionless, Document: own, Edition: none,
		Clause: "a slope below this share of theory makes us ask for the units", Mark: Own},

	{ID: "calibration.fit", Value: "f(x) = y_m + c_1 (x - x_m) + c_2 ((x - x_m)^2 - alpha (x - x_m) - beta)", Formula: true, Document: regression, Edition: "recalled",
		Clause: "least squares of the observed on the set quantity, by orthogonal polynomials (Forsythe 1957)", Mark: Memory},
	{ID: "calibration.predict", Value: "u = s sqrt(1/m + h(x))", Formula: true, Document: regression, Edition: "recalled",
		Clause: "doubt of a single new observation; without 1/m that of the curve, as JCGM 100 H.3.4", Mark: Memory},
	{ID: "calibration.inverse", Value: "|y - f(x)| = k s sqrt(1/m + h(x)) at both limits", Formula: true, Document: "Fieller, J. R. Stat. Soc. B 16", Edition: "1954, recalled",
		Clause: "pages 175-185; for a line in closed form, for a quadratic by inverting the band", Mark: Memory},
	{ID: "calibration.student", Value: "k: Student's t, two-sided", Formula: true, Document: gum, Edition: "2008",
		Clause: "annex G.3, continuous in the degrees of freedom", Mark: Memory},
	{ID: "calibration.combine", Value: "u_c^2 = sum (c u)^2, nu = u_c^4/sum ((c u)^4/nu_i), U = k u_c", Formula: true, Document: gum, Edition: "2008",
		Clause: "5.1.2, formula (10); G.4.1, formula (G.2b); 6.2.1", Mark: Memory},
	{ID: "calibration.chance", Value: "P = P(T > (F_1 - F_2)/u_c)", Formula: true, Document: "JCGM 106", Edition: "2012",
		Clause: "7, probability of conformity, with Student's t", Mark: Memory},

	{ID: "rig.load.gauge", Value: "F = eta A p_true(p) + W", Formula: true, Document: statics, Edition: none,
		Clause: "the gauge is calibrated, the jacks are not", Mark: Practice},
	{ID: "rig.load.cylinder", Value: "F = n f(p) + W", Formula: true, Document: statics, Edition: none,
		Clause: "n equal cylinders, one of which was on the bench", Mark: Practice},
	{ID: "rig.load.circuit", Value: "F = f(p), or f(p) + W", Formula: true, Document: statics, Edition: none,
		Clause: "W beside the curve where the reference load does not hold it", Mark: Practice},
	{ID: "rig.budget", Value: "u_i = |c_i| u(x_i), u(x) = a/sqrt 3 within -a and a, U/k of an expanded uncertainty", Formula: true, Document: gum, Edition: "2008",
		Clause: "5.1.3, sensitivities; 4.3.7, even limits; 4.3.3, expanded uncertainty; G.4.2, nu = 1/(2 r^2) where doubted", Mark: Memory},
	{ID: "rig.twoGauges", Value: "E_n = |p_1 - p_2|/sqrt(U_1^2 + U_2^2)", Formula: true, Document: "ISO/IEC 17043", Edition: "recalled",
		Clause: "E_n number; above 1 the two do not agree within their uncertainties", Mark: Memory},
}
