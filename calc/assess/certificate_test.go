package assess_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
)

// calibrated is the hand case with a certificate of its circuit, the weight on
// the head in the reference load: readings 2 to 20 MPa, loads of 120 kN a MPa
// with some scatter. By hand: n = 10, x_m = 11 MPa, y_m = 1320.9 kN.
func calibrated(t *testing.T, kind string, values ...string) *document.Node {
	var plain []string // "lines:" and a name stand in place of the path of a list
	for i := 0; i+1 < len(values); i += 2 {
		if !strings.HasPrefix(values[i], "lines:") {
			plain = append(plain, values[i], values[i+1])
		}
	}
	root := with(t, append([]string{
		"/rigs/r/circuits/c/loadBy", "certificate", "/gauges/g/class", "1.0 %", "/gauges/g/celsius", "30", "/gauges/g/zeroError", "0.1 MPa",
		"/rigs/r/circuits/c/onHeadUncertainty", "1.5 kN",
		"/certificates/z/number", "K-118", "/certificates/z/kind", kind, "/certificates/z/rig", "r", "/certificates/z/circuit", "c", "/certificates/z/gauge", "g",
		"/certificates/z/on", "2026-05-20", "/certificates/z/validMonths", "6", "/certificates/z/run", "rising", "/certificates/z/ram", "active",
		"/certificates/z/set", "reading", "/certificates/z/onHeadIncluded", "yes", "/certificates/z/columns", "MPa kN", "/certificates/z/fit", "line",
		"/certificates/z/referenceUncertainty", "0.5 %", "/certificates/z/coverage", "2",
	}, plain...)...)
	points(t, root, "points", circuitPoints...)
	for i := 0; i+1 < len(values); i += 2 {
		if name, ok := strings.CutPrefix(values[i], "lines:"); ok {
			points(t, root, name, strings.Split(values[i+1], "|")...)
		}
	}
	return root
}

var circuitPoints = []string{"2.0 243.1", "4.0 479.2", "6.0 722.4", "8.0 958.8", "10.0 1202.6", "12.0 1438.9", "14.0 1683.1", "16.0 1918.8", "18.0 2162.7", "20.0 2399.4"}

func points(t *testing.T, root *document.Node, name string, lines ...string) {
	list := document.NewList()
	for _, l := range lines {
		list.Append(document.NewText(l))
	}
	patch, ok := job.View(root).Patch("/now/certificates/z/"+name, list)
	require.True(t, ok)
	document.MergePatch(root.Get("now"), patch)
}

// By hand: b_1 = sum (x - x_m)(y - y_m)/sum (x - x_m)^2, with x in MPa: the sums
// are 39582.4 and 330, so b_1 = 119.9467 kN/MPa, b_0 = 1320.9 - 11 b_1 = 1.487 kN.
// 1,800 kN stand at (1800 - 1.487)/119.9467 = 14.994 MPa, so the set reading is
// 15.0 MPa with 1800.7 kN on the head.
func TestHandCaseByCertificate(t *testing.T) {
	a := answer(t, calibrated(t, "circuit"))
	require.Equal(t, assess.Open, a.State, "%v %v", a.Reasons, a.Needs)
	assert.Equal(t, "15.0 MPa", a.Set.Text(quantity.Point))
	assert.Equal(t, "1800.7 kN", a.LoadAtSet.Text(quantity.Point))
	assert.Equal(t, a.LoadAtSet.V, a.Most.V, "one load, no efficiencies")
	assert.Nil(t, a.Low)
	assert.Equal(t, "18.0 MPa", a.Never.Text(quantity.Point)) // (2200 - 1.487)/119.9467 = 18.33
	require.NotNil(t, a.Certificate)
	assert.Equal(t, []any{"K-118", "2026-11-20", 10}, []any{a.Certificate.Number, a.Certificate.LastDay, a.Certificate.Left})
	require.NotNil(t, a.Uncertainty, "%v", a.UncertaintyNeeds)
	assert.Nil(t, a.EfficiencyShare)
}

// A certificate is refused in words, and no older one is taken in its place.
func TestCertificatesThatAreNotTaken(t *testing.T) {
	for name, c := range map[string]struct {
		values []string
		state  assess.State
		code   string
	}{
		"passive":         {[]string{"/certificates/z/ram", "passive"}, assess.Refused, "certificate.passive"},
		"falling only":    {[]string{"/certificates/z/run", "falling"}, assess.Refused, "certificate.fallingOnly"},
		"gauge's kind":    {[]string{"/certificates/z/kind", "gauge"}, assess.Refused, "certificate.kindMixed"},
		"future":          {[]string{"/certificates/z/on", "2026-12-01"}, assess.Refused, "reason.certificate.n"},
		"expired":         {[]string{"/certificates/z/validMonths", "5"}, assess.Refused, "reason.certificate.e"},
		"void":            {[]string{"/certificates/z/voidFrom", "2026-11-01"}, assess.Refused, "reason.certificate.v"},
		"no date":         {[]string{"/certificates/z/on", ""}, assess.Refused, "reason.certificate.d"},
		"no period":       {[]string{"/certificates/z/validMonths", ""}, assess.Refused, "reason.certificate.p"},
		"decreasing":      {[]string{"lines:points", "2.0 300|4.0 200|6.0 100"}, assess.Refused, "calibration.decreasing"},
		"all equal":       {[]string{"lines:points", "4.0 300|4.0 301|4.0 302"}, assess.Refused, "calibration.setEqual"},
		"one point":       {[]string{"lines:points", "4.0 300"}, assess.Refused, "calibration.tooFew"},
		"quadratic turns": {[]string{"/certificates/z/fit", "quadratic", "lines:points", "2.0 300|4.0 500|6.0 600|8.0 600|10.0 500|12.0 320"}, assess.Refused, "calibration.turns"},
		"outside":         {[]string{"lines:points", "2.0 243.1|4.0 479.2|6.0 722.4"}, assess.Refused, "certificate.outside"},
		"half a line":     {[]string{"lines:points", "2.0 243.1|4.0 -|6.0 722.4|20.0 2399.4"}, assess.Refused, "certificate.unread"},
		"none":            {[]string{"/certificates/z/circuit", ""}, assess.Refused, "reason.noCertificate"},
		"ram not said":    {[]string{"/certificates/z/ram", ""}, assess.Incomplete, "field.certificates.ram"},
		"which was set":   {[]string{"/certificates/z/set", ""}, assess.Incomplete, "field.certificates.set"},
		"W or not":        {[]string{"/certificates/z/onHeadIncluded", ""}, assess.Incomplete, "field.certificates.onHeadIncluded"},
		"run not said":    {[]string{"/certificates/z/run", ""}, assess.Incomplete, "field.certificates.run"},
		"no columns":      {[]string{"/certificates/z/columns", ""}, assess.Incomplete, "field.certificates.columns"},
		"no gauge":        {[]string{"/certificates/z/gauge", ""}, assess.Incomplete, "field.certificates.gauge"},
		"by what?":        {[]string{"/rigs/r/circuits/c/loadBy", ""}, assess.Incomplete, "field.rigs.circuits.loadBy"},
		"division":        {[]string{"/gauges/g/division", ""}, assess.Incomplete, "field.gauges.division"},
	} {
		root := calibrated(t, "circuit")
		for i := 0; i < len(c.values); i += 2 {
			if list, ok := strings.CutPrefix(c.values[i], "lines:"); ok {
				points(t, root, list, strings.Split(c.values[i+1], "|")...)
				continue
			}
			patch, _ := job.View(root).Patch("/now"+c.values[i], document.NewText(c.values[i+1]))
			document.MergePatch(root.Get("now"), patch)
		}
		a := answer(t, root)
		assert.Equal(t, c.state, a.State, name)
		assert.Nil(t, a.Set, name)
		if c.state == assess.Incomplete {
			assert.Contains(t, a.Needs, c.code, name)
			continue
		}
		require.NotEmpty(t, a.Reasons, name)
		assert.Equal(t, c.code, a.Reasons[0].Code, name)
	}
}

// Two points: the reading stands, its uncertainty is not known, which is not
// zero, and the guard gives no reading.
func TestTwoPointsLeaveTheUncertaintyNotKnown(t *testing.T) {
	root := calibrated(t, "circuit")
	points(t, root, "points", "2.0 243.1", "20.0 2399.4")
	a := answer(t, root)
	assert.Equal(t, assess.Open, a.State)
	assert.Nil(t, a.Uncertainty)
	require.NotNil(t, a.UncertaintyFault)
	assert.Equal(t, "calibration.doubtNotKnown", a.UncertaintyFault.Code)
}

// An efficiency that is stated instead stands as before, and the certificate is
// said not to count.
func TestByEfficiencyBesideACertificate(t *testing.T) {
	root := calibrated(t, "circuit")
	patch, _ := job.View(root).Patch("/now/rigs/r/circuits/c/loadBy", document.NewText("efficiency"))
	document.MergePatch(root.Get("now"), patch)
	a := answer(t, root)
	assert.Equal(t, "1820.7 kN", a.LoadAtSet.Text(quantity.Point))
	assert.Contains(t, a.Notes, assess.Note{Code: "note.certificateUnused", Args: []string{"K-118"}})
}

// Without a class, only a gauge other than the certificate's asks for it.
func TestAnotherGaugeBringsItsClassBack(t *testing.T) {
	root := calibrated(t, "circuit", "/gauges/g/class", "")
	assert.NotNil(t, answer(t, root).Uncertainty)
	patch, _ := job.View(root).Patch("/now/gauges/h/serial", document.NewText("H"))
	document.MergePatch(root.Get("now"), patch)
	patch, _ = job.View(root).Patch("/now/certificates/z/gauge", document.NewText("h"))
	document.MergePatch(root.Get("now"), patch)
	a := answer(t, root)
	assert.Equal(t, []string{"field.gauges.class"}, a.UncertaintyNeeds)
	assert.Contains(t, a.Notes, assess.Note{Code: "note.otherGauge", Args: []string{"K-118"}})
}

// A limit above the certificate is read at its end, and one below it not at all.
func TestLimitsOutsideTheCertificate(t *testing.T) {
	root := calibrated(t, "circuit", "/pileTypes/t/pressingLimit", "2500 kN", "/rigs/r/mass", "400 t")
	a := answer(t, root)
	assert.Equal(t, "20.0 MPa", a.Never.Text(quantity.Point))
	codes := []string{}
	for _, l := range a.Limits {
		for _, n := range l.Notes {
			codes = append(codes, n.Code)
		}
	}
	assert.Contains(t, codes, "note.certificateEnds")
	low := answer(t, calibrated(t, "circuit", "/pileTypes/t/pressingLimit", "200 kN"))
	assert.Equal(t, assess.LimitMissing, low.State)
}

// certificateTrees hands these jobs on to the tests of the working.
func certificateTrees(t *testing.T, into map[string]*document.Node) {
	gauge := []string{"/certificates/z/columns", "MPa MPa", "lines:points", "2.0 2.01|4.0 3.98|6.0 6.03|8.0 7.99|10.0 10.02|12.0 11.97|14.0 14.03|16.0 15.98|18.0 18.01|20.0 19.99|22.0 22.02"}
	cylinder := []string{"/certificates/z/cylinders", "4", "lines:points", "2.0 60.1|4.0 119.6|6.0 180.4|8.0 239.8|10.0 300.6|12.0 359.9|14.0 420.1|16.0 479.8|18.0 540.7|20.0 599.4"}
	set := []string{"/certificates/z/set", "load"}
	bent := []string{"/certificates/z/fit", "quadratic"}
	for name, c := range map[string]struct {
		kind   string
		values []string
	}{
		"circuit":           {"circuit", nil},
		"circuit, W beside": {"circuit", []string{"/certificates/z/onHeadIncluded", "no"}},
		"circuit, set":      {"circuit", set},
		"circuit, bent":     {"circuit", bent},
		"gauge":             {"gauge", gauge},
		"gauge, set":        {"gauge", append(append([]string{}, gauge...), set...)},
		"cylinder":          {"cylinder", cylinder},
		"cylinder, bent":    {"cylinder", append(append([]string{}, cylinder...), bent...)},
		"two points":        {"circuit", []string{"lines:points", "2.0 243.1|20.0 2399.4"}},
		"at its end":        {"circuit", []string{"/pileTypes/t/pressingLimit", "2500 kN", "/rigs/r/mass", "400 t"}},
		"at its end, set":   {"circuit", append([]string{"/pileTypes/t/pressingLimit", "2500 kN", "/rigs/r/mass", "400 t"}, set...)},
		"other gauge":       {"circuit", []string{"/gauges/h/serial", "H", "/certificates/z/gauge", "h"}},
	} {
		into["certificate "+name] = calibrated(t, c.kind, c.values...)
		into["certificate guarded "+name] = calibrated(t, c.kind, append([]string{"/guard", "yes"}, c.values...)...)
	}
	two := calibrated(t, "circuit", "/gauges/h/fullScale", "40 MPa", "/gauges/h/division", "5 bar", "/gauges/h/class", "1.6 %", "/gauges/h/zeroError", "1 bar")
	records, complaints := document.ReadText(`{"r":{"kind":"comparison","gauge":"g","other":"h","parts":{"s":{"from":"2026-11-10T06:00:00Z","columns":"s MPa bar","lines":["0 15.0 153"]}}},
		"z":{"kind":"zero","gauge":"g","parts":{"s":{"from":"2026-11-10T06:00:00Z","columns":"s MPa","lines":["0 -0.1"]}}}}`)
	require.True(t, complaints.None())
	two.Set("records", records)
	into["two gauges"] = two
}

// By hand, in MPa: U_g = 1.96 sqrt((0.4^2 + 0.25^2 + 0.1^2)/3) = 0.5457, U_h = 1.96
// sqrt((0.64^2 + 0.25^2 + 0.1^2)/3) = 0.7857; E = 0.3/0.9566 = 0.31.
func TestTwoGaugesOfAJob(t *testing.T) {
	trees := map[string]*document.Node{}
	certificateTrees(t, trees)
	s, ok := judge(trees["two gauges"]).GaugeSheet("g", nil)
	require.True(t, ok)
	require.Len(t, s.Comparisons, 1)
	assert.InDelta(t, 0.3136, s.Comparisons[0].E.V, 0.0005)
	assert.True(t, s.Comparisons[0].Agree)
	require.Len(t, s.Zeros, 1)
	assert.True(t, s.Zeros[0].Within)
	assert.Equal(t, "2026-11-10", s.OneOnly, "a shift has two checks of zero")
}

// An as-found result outside its limits puts the piles in doubt that were pressed
// since the certificate before it, on the same circuit; a certificate that holds
// for a number of piles is used up by them.
func TestAsFoundAndNumberOfPiles(t *testing.T) {
	root := calibrated(t, "circuit", "/certificates/z/asFound", "outside limits", "/certificates/z/on", "2026-11-05", "/certificates/z/validPiles", "2",
		"/certificates/y/kind", "circuit", "/certificates/y/rig", "r", "/certificates/y/circuit", "c", "/certificates/y/on", "2026-06-01", "/piles/q/mark", "P2", "/piles/w/mark", "P3")
	drive := func(pile, day, with string) string {
		return `{"kind":"drive","pile":"` + pile + `","parts":{"s":{"from":"` + day + `T06:00:00Z","columns":"s m MPa","lines":["0 0.5 2.0"],"events":[{"s":0,"is":"set-up","rig":"r","circuit":"c","gauge":"g","certificate":"` + with + `"}]}}}`
	}
	records, complaints := document.ReadText(`{"a":` + drive("p", "2026-07-01", "y") + `,"b":` + drive("q", "2026-05-31", "y") + `,"c":` + drive("w", "2026-11-06", "z") + `}`)
	require.True(t, complaints.None())
	root.Set("records", records)
	s, ok := judge(root).CertificateSheet("z", nil)
	require.True(t, ok)
	assert.Equal(t, []string{"P1"}, s.Doubted)
	assert.Equal(t, []string{"2026-06-01", "2026-11-05"}, []string{s.Since, s.Until})
	assert.Equal(t, assess.Open, answer(t, root).State)
	more, _ := document.ReadText(`{"a":` + drive("p", "2026-11-07", "z") + `,"c":` + drive("w", "2026-11-06", "z") + `}`)
	root.Set("records", more)
	a := answer(t, root)
	assert.Equal(t, assess.Refused, a.State)
	assert.Equal(t, "reason.certificate.u", a.Reasons[0].Code)
}
