package desk

import (
	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/words"
)

// showFleet sets the piles of the job against the circuits of its rigs: which
// can set which, with how much ballast, and what stops the rest. The totals
// are over all piles; rows come a page at a time.
func (f *file) showFleet(r *document.Node) *document.Node {
	j := f.judge()
	berths, ids := j.Berths(), f.pilesInOrder()
	from, last := pageOf(r, len(ids))
	sets, heavier := make([]int, len(berths)), make([]int, len(berths))
	rows := document.NewList()
	for i, id := range ids {
		cells := document.NewList()
		shown := i >= from && i < last
		p, _ := f.job().Pile(id)
		for k, at := range berths {
			fit, _ := j.Fit(id, at)
			switch {
			case fit.State == assess.Open:
				sets[k]++
			case fit.Ballast != nil:
				heavier[k]++
			}
			if shown {
				cells.Append(f.fitCell(fit, at).with("chosen", yes(p.Rig == at.Rig.ID && p.Circuit == at.Circuit.ID)).Node)
			}
		}
		if shown {
			rows.Append(newObject().with("id", text(id)).with("mark", text(named(p.Mark))).with("cells", cells).Node)
		}
	}
	columns := document.NewList()
	for k, at := range berths {
		says := words.Say("fleet.total", itoa(sets[k]), itoa(len(ids)))
		if heavier[k] > 0 {
			says = words.Say("fleet.totalBallast", itoa(sets[k]), itoa(len(ids)), itoa(heavier[k]))
		}
		columns.Append(newObject().with("rig", text(at.Rig.ID)).with("circuit", text(at.Circuit.ID)).
			with("name", text(named(at.Rig.Name)+", "+named(at.Circuit.Name))).
			with("says", text(says)).Node)
	}
	return okay().with("title", text(f.job().Title())).with("count", whole(len(ids))).with("from", whole(from)).with("columns", columns).with("rows", rows).Node
}

func (f *file) fitCell(fit assess.Fit, at assess.Berth) object {
	state, says := "stopped", ""
	switch {
	case fit.State == assess.Open:
		state, says = "sets", words.Say("fleet.sets", f.textOf(fit.Set))
	case fit.Ballast != nil:
		state, says = "ballast", words.Say("fleet.ballast", f.textOf(fit.Ballast))
	case fit.State == assess.Incomplete:
		state, says = "unknown", words.Say("fleet.needs", needs(fit.Needs))
	case fit.State == assess.LimitMissing:
		state, says = "unknown", words.Say("fleet.missing", stopsList(fit.Stops))
	case len(fit.Stops) > 0:
		says = words.Say("fleet.stopped", stopsList(fit.Stops))
	default:
		says = words.Say("state." + string(fit.State))
	}
	return newObject().with("rig", text(at.Rig.ID)).with("circuit", text(at.Circuit.ID)).
		with("name", text(named(at.Rig.Name)+", "+named(at.Circuit.Name))).with("state", text(state)).with("says", text(says))
}

func stopsList(kinds []string) string {
	var list []string
	for _, k := range kinds {
		list = append(list, words.Say("fleet.limit."+k))
	}
	return words.List(list)
}
