package assess

import (
	"sort"

	"gaugewright/calc/calibration"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/rig"
	"gaugewright/calc/working"
)

// CertificateSteps begins the places of the steps of a certificate by itself.
const CertificateSteps = "certificate/"

// CertificateSheet is all that a certificate says and what follows from it.
type CertificateSheet struct {
	job.Certificate
	State   rig.State // on the day of use
	LastDay string
	Left    int
	HasLeft bool
	Needs   []string // what is not said
	Fault   *Note    // why it gives no curve
	Curve   *CurveSheet
	Flags   []Note
	// Since and Until are the days between which piles were pressed that a result
	// outside its limits puts in doubt, Doubted their marks; Until is blank where no
	// such result is stated.
	Since, Until string
	Doubted      []string
}

// CurveSheet is the curve through the rising run.
type CurveSheet struct {
	Columns    [2]string // the units of the points
	Points     []PointSheet
	Low, High  *Number    // range of what was set
	B, SE      []*Number  // coefficients with their standard errors
	SD         *Number    // standard deviation about the curve; nil where not known
	Freedom    int        // its degrees of freedom
	Share      *Number    // slope over theory
	Theory     *Number    // area by theory; of one cylinder, or of the circuit
	Hysteresis *Number    // largest difference falling less rising
	HystShare  *Number    // part of the largest observed
	LackOfFit  *TestSheet // where points repeat
	Quadratic  *TestSheet // of the quadratic term
	Outlier    float64    // the limit of deleted residuals; 0 where none are known
}

// PointSheet is a point with its residual. X and Y are for a drawing: the place
// of what was set in its range, and the residual over the largest one.
type PointSheet struct {
	Stated                  string // the line as it stands in the file
	Set, Observed, Residual *Number
	Deleted                 float64 // residual from the curve through the others, in standard deviations
	Outlier                 bool
	X, Y                    float64
}

// TestSheet is an F-test.
type TestSheet struct {
	F, P         float64
	Above, Below int
}

// CertificateSheet works a certificate out by itself, with the working of its
// curve under [CertificateSteps], its id and "/". ok is false where there is no
// such certificate.
func (j *Job) CertificateSheet(id string, b *working.Book) (s CertificateSheet, ok bool) {
	c, ok := j.Certificate(id)
	if !ok {
		return s, false
	}
	s.Certificate = c
	s.State = c.Validity.Cover(j.day, j.pressedWith(c))
	s.LastDay, _ = c.Validity.LastDay()
	s.Left, s.HasLeft = c.Validity.DaysLeft(j.day)
	s.Since, s.Until, s.Doubted = j.doubted(c)
	if s.Needs = c.Asked(); len(s.Needs) > 0 {
		return s, true
	}
	k, fault := j.fit(c)
	if fault != nil {
		s.Fault = &Note{fault.Code, fault.Args(j.Sign())}
		return s, true
	}
	s.Curve = j.curveSheet(c, k, b.Under(CertificateSteps+id+"/"))
	for _, flag := range k.Flags {
		s.Flags = append(s.Flags, j.flagNote(flag))
	}
	if g, ok := j.Gauge(c.Gauge); ok && g.Division.Known() && g.Division.Stated.Unit != c.PressureUnit {
		s.Flags = append(s.Flags, Note{"certificate.otherUnit", []string{c.PressureUnit.Symbol, g.Division.Stated.Unit.Symbol}})
	}
	if c.AsFound == "" {
		s.Flags = append(s.Flags, Note{Code: "certificate.asFoundBlank"})
	}
	return s, true
}

// curveSheet shows the curve in the units of the certificate's columns.
func (j *Job) curveSheet(c job.Certificate, k rig.Calibrated, b *working.Book) *CurveSheet {
	w := workCurve(b, "", c, k)
	curve := k.Curve
	set, observed := c.PressureUnit, c.ReferenceUnit
	if k.ReferenceSet {
		set, observed = observed, set
	}
	decimals := c.Rising.Decimals(k.ReferenceSet)
	inX := func(v float64, ref string) *Number { return &Number{V: v, Unit: set, Decimals: decimals, Ref: ref} }
	inY := func(v float64, ref string) *Number {
		return &Number{V: v, Unit: observed, Decimals: digitsOf(curve.At(curve.High), observed), Ref: ref}
	}
	s := &CurveSheet{Columns: [2]string{c.PressureUnit.Symbol, c.ReferenceUnit.Symbol}, Low: inX(curve.Low, ""), High: inX(curve.High, w.High("range.high").Ref), Freedom: curve.DF}
	outliers, limit, _ := curve.Outliers()
	s.Outlier = limit
	largest := 0.0
	for _, e := range curve.Residuals {
		largest = max(largest, e, -e)
	}
	for i, p := range curve.Points {
		one := PointSheet{Stated: c.Rising.Lines[i], Set: inX(p.X, c.Rising.Places[i]), Observed: inY(p.Y, c.Rising.Places[i]), Residual: inY(curve.Residuals[i], w.Residuals[i].Ref),
			X: (p.X - curve.Low) / (curve.High - curve.Low)}
		one.Residual.Decimals++
		if largest > 0 {
			one.Y = curve.Residuals[i] / largest
		}
		if outliers != nil {
			one.Deleted, one.Outlier = outliers[i].T, outliers[i].Outlier
		}
		s.Points = append(s.Points, one)
	}
	s.coefficients(k, w, inY)
	if curve.Known() {
		s.SD = inY(curve.SD, w.SD.Ref)
		s.SD.Decimals++
	}
	if k.Share > 0 {
		s.share(j, c, k, w, b)
	}
	if h := k.Hysteresis; h != nil {
		s.Hysteresis = inY(h.Largest, c.Falling.Places[h.At])
		s.HystShare = &Number{V: h.Share, Unit: quantity.Must("%"), Decimals: 2, Ref: c.Falling.Places[h.At]}
	}
	if t, ok := curve.LackOfFit(); ok {
		s.LackOfFit = &TestSheet{t.F, t.P, t.Above, t.Below}
	}
	if t, ok := calibration.QuadraticTerm(curve.Points); ok {
		s.Quadratic = &TestSheet{t.F, t.P, t.Above, t.Below}
	}
	return s
}

// digitsOf gives a value of that size four figures or so in a unit.
func digitsOf(v float64, u quantity.Unit) int {
	switch v = u.From(v); {
	case v >= 1000:
		return 1
	case v >= 100:
		return 2
	}
	return 3
}

// coefficients are shown in coherent units: what a reviewer puts into a
// calculator is in the working.
func (s *CurveSheet) coefficients(k rig.Calibrated, w calibration.Worked, inY func(float64, string) *Number) {
	per := k.ObservedDim().Over(k.SetDim())
	for i := range int(k.Degree) + 1 {
		var n, se *Number
		if i == 0 {
			n, se = inY(k.Curve.B[0], w.B[0].Ref), inY(k.Curve.SE[0], w.SE[0].Ref)
			se.Decimals++
		} else {
			unit := quantity.Coherent(per)
			per = per.Over(k.SetDim())
			n = &Number{V: k.Curve.B[i], Unit: unit, Decimals: 7 + 4*(i-1), Ref: w.B[i].Ref}
			se = &Number{V: k.Curve.SE[i], Unit: unit, Decimals: 7 + 4*(i-1), Ref: w.SE[i].Ref}
		}
		s.B = append(s.B, n)
		if !k.Curve.Known() {
			se = nil
		}
		s.SE = append(s.SE, se)
	}
}

// share holds the slope against theory: the area of the circuit, or of one of
// its equal cylinders; of a gauge, 1.
func (s *CurveSheet) share(j *Job, c job.Certificate, k rig.Calibrated, w calibration.Worked, b *working.Book) {
	var theory working.In
	if c.Kind != "gauge" {
		circuit := j.machine(c.Rig).circuits[c.Circuit]
		groups, _ := circuit.Cylinders()
		if c.Kind == "cylinder" {
			groups = groups[:1]
		}
		area, _ := rig.Area(groups)
		of := working.Put(b, rig.AreaRule(groups), "theory.all", area, rig.AreaInputs(groups, func(g int, name string) string {
			return circuit.Groups[g].Path + "/" + name
		})...)
		if c.Kind == "cylinder" {
			number := working.In{V: float64(groups[0].Number), Ref: circuit.Groups[0].Path + "/number"}
			of = working.Put(b, rig.OneCylinderRule, "theory", j.theory(c), of.In(), number)
		}
		theory = of.In()
		s.Theory = number(of, quantity.Must("cm2"))
	}
	s.Share = &Number{V: float64(k.Share), Unit: quantity.Must(""), Decimals: 3, Ref: k.WorkShare(b, "share", w, theory).Ref}
}

// doubted lists the piles that a result outside its limits puts in doubt: those
// whose driving began on a day from the certificate before it to its own, with a
// set-up that names the same gauge or circuit.
func (j *Job) doubted(c job.Certificate) (since, until string, marks []string) {
	if c.AsFound != "outside limits" {
		return "", "", nil
	}
	var dates []string
	at := 0
	for _, id := range j.Certificates() {
		other, _ := j.Certificate(id)
		if other.ID != c.ID && !sameThing(other, c) {
			continue
		}
		if other.ID == c.ID {
			at = len(dates)
		}
		dates = append(dates, other.Validity.On)
	}
	since, until, ok := rig.InDoubt(dates, at)
	if !ok {
		return "", "", nil
	}
	found := map[string]bool{}
	for _, r := range j.Records("drive") {
		for _, part := range r.Parts() {
			day := job.Day(part.From)
			if day < since || day > until || !j.pressedBy(r, c) {
				continue
			}
			if p, ok := j.Job.Pile(r.Text("pile")); ok {
				found[p.Mark] = true
			}
		}
	}
	for m := range found {
		marks = append(marks, m)
	}
	sort.Slice(marks, func(a, b int) bool { return job.Natural(marks[a], marks[b]) })
	return since, until, marks
}

// sameThing says whether two certificates are of one gauge or circuit.
func sameThing(a, b job.Certificate) bool {
	if a.Kind == "gauge" || b.Kind == "gauge" {
		return a.Kind == b.Kind && a.Gauge == b.Gauge
	}
	return a.Rig == b.Rig && a.Circuit == b.Circuit
}

// pressedBy says whether a drive had the gauge or circuit of a certificate.
func (j *Job) pressedBy(r job.Record, c job.Certificate) bool {
	for _, part := range r.Parts() {
		for _, e := range part.Events() {
			if e.Is != "set-up" {
				continue
			}
			if c.Kind == "gauge" && e.Text("gauge") == c.Gauge || c.Kind != "gauge" && e.Text("rig") == c.Rig && e.Text("circuit") == c.Circuit {
				return true
			}
		}
	}
	return false
}
