package assess

import (
	"gaugewright/calc/document"
	"gaugewright/calc/drive"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
)

// Outcomes judges what came out of piles that are pressed, by what the job says
// now. It is made anew when anything but the records changes.
type Outcomes struct {
	job     job.Job
	days    map[string]*pressing
	windows map[windowKey]bounds
}

// windowKey is all that the window of a pile hangs on, but for what piles share.
type windowKey struct {
	pile string // what it says of its load, type and criterion
	job.SetUp
}

// bounds are a set and a never-exceed reading.
type bounds struct{ set, never drive.Pressure }

// beside are the fields of a pile on which its window does not hang, only notes,
// make-up, head and place do.
var beside = map[string]bool{"mark": true, "note": true, "group": true, "rank": true, "east": true, "north": true, "platform": true, "founding": true,
	"cutoff": true, "expectedToe": true, "leastToe": true, "stickUp": true, "struck": true}

// pressing judges the set-ups of one day.
type pressing struct {
	*Job
	berths map[job.SetUp]*berth
}

// berth is a circuit as it was set up.
type berth struct {
	rig     job.Rig
	circuit circuit
}

// OutcomesOf returns the judge of pressed piles.
func OutcomesOf(j job.Job) *Outcomes {
	// A text that cannot be read yet is not looked at: the field is blank.
	return &Outcomes{job: job.View(copied(j.Root, func(name string, _ *document.Node) bool { return name != "unread" })), days: map[string]*pressing{}, windows: map[windowKey]bounds{}}
}

// copied is a map with those of its members that are to stay.
func copied(n *document.Node, stays func(name string, value *document.Node) bool) *document.Node {
	m := document.NewMap()
	for name, value := range n.Members() {
		if stays(name, value) {
			m.Set(name, value)
		}
	}
	return m
}

// before is the job as it was at the beginning of a day, as far as certificates
// count piles: without the records that begin later.
func (o *Outcomes) before(day string) job.Job {
	counted := false
	for _, c := range o.job.Root.Get("now").Get("certificates").Members() {
		counted = counted || c.Get("validPiles").Text() != ""
	}
	if !counted {
		return o.job
	}
	root := copied(o.job.Root, func(string, *document.Node) bool { return true })
	root.Set("records", copied(root.Get("records"), func(_ string, record *document.Node) bool {
		early := false
		for _, part := range record.Get("parts").Members() {
			early = early || part.Get("from").Text() < day
		}
		return early
	}))
	return job.View(root)
}

// Of says what came out of a pile: each stretch of its drive is judged with the
// pile's own load, criterion and type, and with the rig, circuit, gauge and
// ballast of its set-up, read by the certificate that covers the day it was
// pressed. What a set-up leaves blank is as the pile, and for the gauge the
// circuit, states it. A certificate for a number of piles counts those that were
// pressed with it before that day.
func (o *Outcomes) Of(pile string, stretches []job.Stretch) drive.Outcome {
	readings := make([]drive.Reading, len(stretches))
	for i, s := range stretches {
		key := windowKey{o.said(pile), s.SetUp}
		b, known := o.windows[key]
		if !known {
			b.set, b.never = o.window(pile, s.SetUp)
			o.windows[key] = b
		}
		readings[i] = drive.Reading{Shown: s.Highest, Peak: s.Peak, Set: b.set, Never: b.never}
	}
	return drive.Press(readings)
}

// said is what a pile says of which its window may hang.
func (o *Outcomes) said(pile string) string {
	var says []byte
	for name, value := range o.job.Root.Get("now").Get("piles").Get(pile).Members() {
		if beside[name] {
			continue
		}
		says = append(append(says, name...), '=')
		if value.Kind() == document.Text {
			says = append(says, value.Text()...)
		} else {
			says = append(says, value.Compact()...)
		}
		says = append(says, '\n')
	}
	return string(says)
}

// window is the set and the never-exceed reading of a pile under a set-up.
func (o *Outcomes) window(pile string, s job.SetUp) (set, never drive.Pressure) {
	p, ok := o.job.Pile(pile)
	if !ok {
		return set, never
	}
	at := o.days[s.Day]
	if at == nil {
		at = &pressing{Of(o.before(s.Day), nil, s.Day), map[job.SetUp]*berth{}}
		o.days[s.Day] = at
	}
	if s.Rig != "" {
		p.Rig = s.Rig
	}
	if s.Circuit != "" {
		p.Circuit = s.Circuit
	}
	s.Rig, s.Circuit = p.Rig, p.Circuit
	a := Answer{ID: pile, Governs: -1}
	w := &judge{Job: at.Job, pile: p, answer: &a}
	w.gather()
	if b := at.berth(s); b != nil {
		w.rig, w.circuit, w.gauge, w.hasGauge = &b.rig, &b.circuit, &b.circuit.gauge, b.circuit.hasGauge
	}
	if w.raking() {
		return set, never
	}
	w.reading()
	if a.Set != nil && a.State != Refused {
		set = drive.Pressure{V: quantity.Pressure(a.Set.V), Known: true}
	}
	if a.Never != nil {
		never = drive.Pressure{V: quantity.Pressure(a.Never.V), Known: true}
	}
	return set, never
}

// berth is the circuit with the gauge and the ballast of a set-up, made once;
// nil where there is no such circuit.
func (p *pressing) berth(s job.SetUp) *berth {
	b, known := p.berths[s]
	if known {
		return b
	}
	if m := p.machine(s.Rig); m != nil && m.circuits[s.Circuit] != nil {
		b = &berth{m.rig, *m.circuits[s.Circuit]}
		b.circuit.chosen = nil
		if s.Gauge != "" {
			b.circuit.Gauge = s.Gauge
			b.circuit.gauge, b.circuit.hasGauge = p.Gauge(s.Gauge)
		}
		if mass := s.Mass(); mass.Known() {
			b.rig.Ballast = mass
		}
	}
	p.berths[s] = b
	return b
}
