package assess

import (
	"strings"

	"gaugewright/calc/job"
)

// Berth is a circuit of a rig: a place from which a pile may be pressed.
type Berth struct {
	Rig     job.Rig
	Circuit job.Circuit
}

// Berths lists the circuits of all rigs of the job, in the order of their
// names.
func (j *Job) Berths() []Berth {
	var list []Berth
	for _, id := range j.Rigs() {
		m := j.machine(id)
		for _, c := range m.rig.Circuits() {
			list = append(list, Berth{m.rig, m.circuits[c].Circuit})
		}
	}
	return list
}

// Fit says whether a pile can be set from a berth.
type Fit struct {
	State   State
	Set     *Number // where the window is open
	Ballast *Number // what must be added, where the reaction alone closes the window
	Stops   []string
	Needs   []string
}

// Fit judges the readings of a pile as if it were pressed from a berth. Stops
// are the kinds of the limits that close the window. The segments and the head
// hang on the rig, too (its grip height and follower); they are not looked at.
func (j *Job) Fit(pile string, at Berth) (f Fit, ok bool) {
	p, ok := j.Job.Pile(pile)
	if !ok {
		return f, false
	}
	p.Rig, p.Circuit = at.Rig.ID, at.Circuit.ID
	a := Answer{ID: pile, Governs: -1}
	w := &judge{Job: j, pile: p, answer: &a}
	w.gather()
	if !w.raking() {
		w.reading()
	}
	f = Fit{State: a.State, Ballast: a.Ballast, Needs: a.Needs}
	if a.State == Open {
		f.Set = a.Set
	}
	for _, r := range a.Reasons {
		for _, prefix := range []string{"reason.closed.", "reason.limitMissing."} {
			if kind, found := strings.CutPrefix(r.Code, prefix); found {
				f.Stops = append(f.Stops, kind)
			}
		}
	}
	return f, true
}
