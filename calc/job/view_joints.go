package job

import (
	"gaugewright/calc/document"
	"gaugewright/calc/quantity"
)

// Joints are what a criterion says about the joints of its piles.
type Joints struct {
	Clear, Last, Stagger Given[quantity.Length]
	Most                 int
	HasMost              bool
}

// Joints returns what the criterion says about joints.
func (c Criterion) Joints() Joints {
	at := reader{c.node, c.Path}
	joints := Joints{Clear: at.length("joints/clear"), Last: at.length("joints/last"), Stagger: at.length("joints/stagger")}
	joints.Most, joints.HasMost = count(c.node.Get("joints").Get("most"))
	return joints
}

// Stratum is a layer of the ground with what is not wanted in it.
type Stratum struct {
	ID, Path, Name  string
	Top, Bottom     Given[quantity.Length]
	NoJoint, NoStop bool
}

// Strata lists the layers by name.
func (j Job) Strata() []Stratum {
	n := j.now.Get("strata")
	var list []Stratum
	for _, id := range ids(n, "name") {
		thing, path := n.Get(id), document.Join("/now/strata", id)
		at := reader{thing, path}
		list = append(list, Stratum{
			ID: id, Path: path, Name: thing.Get("name").Text(), Top: at.length("top"), Bottom: at.length("bottom"),
			NoJoint: thing.Get("noJoint").Text() == "yes", NoStop: thing.Get("noStop").Text() == "yes",
		})
	}
	return list
}
