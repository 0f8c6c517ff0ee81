package desk

import (
	"gaugewright/calc/document"
	"gaugewright/calc/job"
	"gaugewright/calc/words"
)

// showKept lists the rigs with their circuits and the pile types that can be
// taken into a sizing.
func (f *file) showKept() *document.Node {
	j := f.job()
	rigs, types := document.NewList(), document.NewList()
	for _, id := range j.Rigs() {
		r, _ := j.Rig(id)
		circuits := document.NewList()
		for _, cid := range r.Circuits() {
			c, _ := r.Circuit(cid)
			lacks := f.lacks(c)
			circuits.Append(newObject().with("id", text(cid)).with("name", text(named(c.Name))).with("says", text(f.circuitSays(c))).
				with("path", text(c.Path)).with("ready", yes(len(lacks) == 0)).with("lacks", texts(lacks)).Node)
		}
		rigs.Append(newObject().with("id", text(id)).with("name", text(named(r.Name))).with("says", text(f.rigDetails(r))).
			with("path", text(r.Path)).with("circuits", circuits).Node)
	}
	for _, id := range j.PileTypes() {
		p, _ := j.PileType(id)
		says := words.Say("kept.noLimit")
		switch {
		case p.LimitWaived:
			says = words.Say("kept.waived", p.Waiver.By)
		case p.PressingLimit.Known():
			says = words.Say("kept.limit", localised(p.PressingLimit.Stated, j.Sign()))
		}
		types.Append(newObject().with("id", text(id)).with("name", text(named(p.Name))).with("says", text(says)).with("path", text(p.Path)).Node)
	}
	return okay().with("rigs", rigs).with("types", types).Node
}

func (f *file) rigDetails(r job.Rig) string {
	sign := f.job().Sign()
	if !r.Mass.Known() {
		return words.Say("kept.noMass")
	}
	if !r.Ballast.Known() {
		return words.Say("kept.mass", localised(r.Mass.Stated, sign))
	}
	return words.Say("kept.massBallast", localised(r.Mass.Stated, sign), localised(r.Ballast.Stated, sign))
}

func (f *file) circuitSays(c job.Circuit) string {
	sign := f.job().Sign()
	says := ""
	for i, g := range c.Groups {
		if !g.HasNumber || !g.Bore.Known() || g.Side == "" {
			continue
		}
		if i > 0 && says != "" {
			says += words.Say("segments.plus")
		}
		says += words.Say("kept.group", itoa(g.Number), localised(g.Bore.Stated, sign), words.Say("choice."+g.Side))
	}
	if g, ok := f.job().Gauge(c.Gauge); ok && g.FullScale.Known() {
		if says != "" {
			says += ", "
		}
		says += words.Say("kept.gauge", named(g.Serial), localised(g.FullScale.Stated, sign))
	}
	return says
}

// lacks lists what a circuit still needs before it gives a reading.
func (f *file) lacks(c job.Circuit) []string {
	var list []string
	lack := func(has bool, key string) {
		if !has {
			list = append(list, words.Say("need."+key))
		}
	}
	_, complete := c.Cylinders()
	g, hasGauge := f.job().Gauge(c.Gauge)
	lack(complete, "field.rigs.circuits.groups")
	lack(c.OnHead.Known(), "field.rigs.circuits.onHead")
	lack(c.Low.Known() || c.LoadBy == "certificate", "field.rigs.circuits.efficiency.low")
	lack(hasGauge && g.Division.Known(), "field.gauges.division")
	return list
}

// showParcel packs a rig with its gauges and certificates, a pile type, or all of them.
func (f *file) showParcel(r *document.Node) *document.Node {
	parcel := newObject()
	put := func(collection, id string) {
		thing := f.root.Get("now").Get(collection).Get(id)
		if thing == nil {
			return
		}
		if parcel.Get(collection) == nil {
			parcel = parcel.with(collection, document.NewMap())
		}
		parcel.Get(collection).Set(id, thing.Clone())
	}
	rig := func(id string) {
		put("rigs", id)
		taken, ok := f.job().Rig(id)
		if !ok {
			return
		}
		dials := map[string]bool{}
		for _, cid := range taken.Circuits() {
			c, _ := taken.Circuit(cid)
			put("gauges", c.Gauge)
			dials[c.Gauge] = c.Gauge != ""
		}
		for cert, thing := range f.root.Get("now").Get("certificates").Members() {
			if thing.Get("rig").Text() == id || thing.Get("kind").Text() == "gauge" && dials[thing.Get("gauge").Text()] {
				put("certificates", cert)
				put("gauges", thing.Get("gauge").Text())
			}
		}
	}
	if r.Get("all").Bool() {
		for _, id := range f.job().Rigs() {
			rig(id)
		}
		for _, id := range f.job().PileTypes() {
			put("pileTypes", id)
		}
	}
	if id := r.Get("rig").Text(); id != "" {
		rig(id)
	}
	if id := r.Get("type").Text(); id != "" {
		put("pileTypes", id)
	}
	return okay().with("parcel", parcel.Node).Node
}
