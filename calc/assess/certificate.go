package assess

import (
	"strconv"

	"gaugewright/calc/calibration"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/rig"
	"gaugewright/calc/working"
)

// certified is a certificate with the curve through it.
type certified struct {
	job.Certificate
	rig.Calibrated
	otherDial bool // made with another gauge than the circuit has now
}

// jacks says whether it calibrates more than the gauge.
func (c *certified) jacks() bool { return c != nil && c.Calibrated.Kind != rig.GaugeAlone }

// chosen is what a circuit is read by on the day of the job, or why it cannot be
// read.
type chosen struct {
	by      *certified // nil: by efficiency
	needs   []string
	refused *Note
	unused  []string // numbers of certificates that the circuit does not go by
}

// choose takes the latest certificate that covers the day: of the circuit or one
// of its cylinders, else of its gauge alone. A certificate that covers the day
// and cannot be used is not passed over for an older one: it refuses, and says
// why.
func (j *Job) choose(c *circuit, rigID string) *chosen {
	if c.chosen != nil {
		return c.chosen
	}
	made := &chosen{}
	c.chosen = made
	jacks, alone := j.CertificatesOf(rigID, c.ID, c.Gauge)
	if len(jacks)+len(alone) == 0 && c.LoadBy != "certificate" {
		return made
	}
	switch c.LoadBy {
	case "":
		made.needs = []string{"field.rigs.circuits.loadBy"}
		return made
	case "efficiency":
		for _, one := range append(jacks, alone...) {
			made.unused = append(made.unused, one.Number)
		}
		return made
	}
	for _, list := range [][]job.Certificate{jacks, alone} {
		validity, piles := make([]rig.Validity, len(list)), make([]int, len(list))
		for i, one := range list {
			validity[i], piles[i] = one.Validity, j.pressedWith(one)
		}
		if i := rig.Latest(validity, piles, j.day); i >= 0 {
			made.use(j, list[i], c)
			return made
		}
	}
	made.refused = j.noneCovers(append(jacks, alone...))
	return made
}

// noneCovers says of the certificate that comes nearest why it does not cover
// the day.
func (j *Job) noneCovers(list []job.Certificate) *Note {
	if len(list) == 0 {
		return &Note{Code: "reason.noCertificate"}
	}
	last := list[len(list)-1]
	for _, one := range list {
		if one.Validity.On > last.Validity.On {
			last = one
		}
	}
	state := last.Validity.Cover(j.day, j.pressedWith(last))
	end, _ := last.Validity.LastDay()
	if state == rig.Void {
		end = last.Validity.VoidFrom
	}
	return &Note{"reason.certificate." + string(rune(state)), []string{last.Number, j.day, end}}
}

// use fits the certificate.
func (made *chosen) use(j *Job, one job.Certificate, c *circuit) {
	if made.needs = one.Asked(); len(made.needs) > 0 {
		return
	}
	k, fault := j.fit(one)
	if fault != nil {
		made.refused = &Note{fault.Code, fault.Args(j.Sign())}
		return
	}
	made.by = &certified{Certificate: one, Calibrated: k, otherDial: one.Gauge != c.Gauge}
}

// fit puts the curve through a certificate. A line without both numbers refuses
// it: no point is dropped silently.
func (j *Job) fit(one job.Certificate) (rig.Calibrated, *calibration.Fault) {
	if n := one.Rising.Unread + one.Falling.Unread; n > 0 {
		return rig.Calibrated{}, &calibration.Fault{Code: "certificate.unread", Value: float64(n)}
	}
	k, err := rig.Calibrate(one.Said(), j.theory(one))
	if err == nil {
		return k, nil
	}
	fault, ok := err.(*calibration.Fault)
	if !ok {
		fault = &calibration.Fault{Code: "certificate.kind"}
	}
	return k, fault
}

// theory is the area that the slope of a certificate is held against: of the
// circuit, or of one of its equal cylinders; 0 where it is not known.
func (j *Job) theory(one job.Certificate) quantity.Area {
	m := j.machine(one.Rig)
	if m == nil || m.circuits[one.Circuit] == nil {
		return 0
	}
	groups, complete := m.circuits[one.Circuit].Cylinders()
	if !complete {
		return 0
	}
	if one.Kind == "cylinder" {
		for i := range groups {
			groups[i].Number = 1
		}
		groups = groups[:1]
	}
	area, err := rig.Area(groups)
	if err != nil {
		return 0
	}
	return area
}

// pressedWith counts the piles that were pressed with a certificate: those
// with a set-up that names it. It is 0 where nobody asks.
func (j *Job) pressedWith(one job.Certificate) int {
	if one.Validity.Piles == 0 {
		return 0
	}
	piles := map[string]bool{}
	for _, r := range j.Records("drive") {
		for _, part := range r.Parts() {
			for _, e := range part.Events() {
				if e.Is == "set-up" && e.Text("certificate") == one.ID {
					piles[r.Text("pile")] = true
				}
			}
		}
	}
	return len(piles)
}

// workCurve puts the curve of a certificate on paper.
func workCurve(b *working.Book, name string, one job.Certificate, k rig.Calibrated) calibration.Worked {
	at := calibration.Places{X: one.Rising.Places, Y: one.Rising.Places, DimX: k.SetDim(), DimY: k.ObservedDim()}
	return k.Curve.Work(b, name, at)
}

// CertificateUsed is what an answer says about the certificate it goes by.
type CertificateUsed struct {
	ID, Number string
	// Jacks says that more than the gauge was calibrated.
	Jacks bool
	// OtherGauge says that it was made with another gauge.
	OtherGauge bool
	// LastDay is the last day it covers, blank where it ends by a number of piles;
	// Left are the days from the day of use to it.
	LastDay string
	Left    int
	HasLeft bool
	// Piles is for how many piles it holds, 0 where that is not said.
	Piles int
	// Look is what a person must look at before the certificate is trusted.
	Look []Note
}

// looked are the flags that are said wherever the certificate is used; the
// tests of the fit stand on its own sheet.
var looked = map[string]bool{"certificate.twoPoints": true, "certificate.slopeAbove": true, "certificate.slopeBelow": true, "certificate.unitsMixed": true,
	"certificate.outlier": true, "certificate.exact": true}

// flagNote says a flag of a certificate.
func (j *Job) flagNote(flag rig.Flag) Note {
	args := []string{quantity.Print(flag.Value, 3, j.Sign()), quantity.Print(flag.Limit, 2, j.Sign()), ""}
	if flag.Point >= 0 {
		args[2] = strconv.Itoa(flag.Point + 1)
	}
	return Note{flag.Code, args}
}

func (w *judge) used(by *certified) *CertificateUsed {
	if by == nil {
		return nil
	}
	u := &CertificateUsed{ID: by.ID, Number: by.Number, Jacks: by.jacks(), OtherGauge: by.otherDial}
	u.LastDay, _ = by.Validity.LastDay()
	u.Left, u.HasLeft = by.Validity.DaysLeft(w.day)
	u.Piles = by.Validity.Piles
	for _, flag := range by.Flags {
		if looked[flag.Code] {
			u.Look = append(u.Look, w.flagNote(flag))
		}
	}
	return u
}
