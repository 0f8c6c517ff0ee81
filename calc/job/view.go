package job

import (
	"sort"

	"gaugewright/calc/document"
	"gaugewright/calc/quantity"
)

// The constants of the envelope.
const (
	Format    = "gaugewright job"
	Schema    = 1
	MinReader = 1
)

// Job is the typed view of a job file.
type Job struct {
	Root *document.Node
	now  *document.Node
}

// View returns the typed view of a tree.
func View(root *document.Node) Job { return Job{root, root.Get("now")} }

// ID returns the job's id.
func (j Job) ID() string { return j.Root.Get("job").Text() }

// Title returns the title, blank for a job that was never named.
func (j Job) Title() string { return j.now.Get("title").Text() }

// Sign returns what the job says about its comma.
func (j Job) Sign() quantity.DecimalSign {
	switch j.now.Get("decimalSign").Text() {
	case ".":
		return quantity.Point
	case ",":
		return quantity.Comma
	}
	return quantity.NotAsked
}

// Guard says whether readings keep the uncertainty away from load and limits:
// "yes", "no" or blank, which is no.
func (j Job) Guard() string { return j.now.Get("guard").Text() }

// JointPrice returns the length of pile that one joint is worth, where a
// person stated it.
func (j Job) JointPrice() Given[quantity.Length] {
	return given[quantity.Length](j.now.Get("jointPrice"), "/now", "jointPrice", quantity.Lengths)
}

// OrderTerms are what the order list of the job is made by.
type OrderTerms struct {
	Spares      Given[quantity.Ratio]
	Reuse       bool // off-cuts are used again
	Least, Loss Given[quantity.Length]
}

// OrderTerms returns the terms of the order list.
func (j Job) OrderTerms() OrderTerms {
	at := reader{j.now, "/now"}
	return OrderTerms{
		Spares: at.ratio("order/spares"), Reuse: j.now.Get("order").Get("reuse").Text() == "yes",
		Least: at.length("order/least"), Loss: at.length("order/loss"),
	}
}

// Has says whether a thing with this id stands in a collection.
func (j Job) Has(collection, id string) bool { return j.now.Get(collection).Get(id) != nil }

// thing returns a member of a collection and its path.
func (j Job) thing(collection, id string) (*document.Node, string) {
	return j.now.Get(collection).Get(id), document.Join("/now/"+collection, id)
}

// struckOut says whether a thing is struck out: a reason stands there. Taken
// back, the reason is blank.
func struckOut(thing *document.Node) bool { return thing.Get("struck").Get("why").Text() != "" }

// ids lists the things of a collection in the natural order of their names,
// ties by id. Struck ones are left out.
func ids(n *document.Node, key string) []string {
	var list []string
	for id, thing := range n.Members() {
		if !struckOut(thing) {
			list = append(list, id)
		}
	}
	sort.SliceStable(list, func(a, b int) bool {
		x, y := n.Get(list[a]).Get(key).Text(), n.Get(list[b]).Get(key).Text()
		if c := compareNatural(x, y); c != 0 {
			return c < 0
		}
		return list[a] < list[b]
	})
	return list
}

// Piles, Rigs, PileTypes, Criteria and Gauges list ids in natural order.
func (j Job) Piles() []string     { return ids(j.now.Get("piles"), "mark") }
func (j Job) Rigs() []string      { return ids(j.now.Get("rigs"), "name") }
func (j Job) PileTypes() []string { return ids(j.now.Get("pileTypes"), "name") }
func (j Job) Criteria() []string  { return ids(j.now.Get("criteria"), "name") }
func (j Job) Gauges() []string    { return ids(j.now.Get("gauges"), "serial") }

// Groups lists the ids of the groups in natural order of their names.
func (j Job) Groups() []string { return ids(j.now.Get("groups"), "name") }

// GroupName returns the name of a group.
func (j Job) GroupName(id string) string { return j.now.Get("groups").Get(id).Get("name").Text() }

// Unread says whether a text stands at a path that cannot be read yet.
func (j Job) Unread(path string) bool { return j.Root.Get("unread").Get(path) != nil }

// Waiver is a limit waived by a named person.
type Waiver struct{ By, Role, On, Why string }

// Complete says that the waiver names a person and a reason; without both it
// waives nothing.
func (w Waiver) Complete() bool { return w.By != "" && w.Why != "" }

func waiverOf(n *document.Node, limit string) (Waiver, bool) {
	w := n.Get("waived").Get(limit)
	if w == nil {
		return Waiver{}, false
	}
	v := Waiver{w.Get("by").Text(), w.Get("role").Text(), w.Get("on").Text(), w.Get("why").Text()}
	return v, v.Complete()
}

// Stock is a length of segment in the yard.
type Stock struct {
	ID, Path, Name string
	Length         Given[quantity.Length]
	Count          int
	HasCount       bool // blank means that the number is not limited
	Type, Role     string
	PressingLimit  Given[quantity.Force] // of this very segment
}

// Stock lists the yard's lengths: longest first, ties by id.
func (j Job) Stock() []Stock {
	n := j.now.Get("stock")
	var list []Stock
	for _, id := range ids(n, "name") {
		thing := n.Get(id)
		path := document.Join("/now/stock", id)
		s := Stock{ID: id, Path: path, Name: thing.Get("name").Text()}
		s.Length = given[quantity.Length](thing.Get("length"), path, "length", quantity.Lengths)
		s.Count, s.HasCount = count(thing.Get("count"))
		s.Type, s.Role = thing.Get("type").Text(), thing.Get("role").Text()
		s.PressingLimit = given[quantity.Force](thing.Get("pressingLimit"), path, "pressingLimit", quantity.Forces)
		list = append(list, s)
	}
	sort.SliceStable(list, func(a, b int) bool { return list[a].Length.V > list[b].Length.V })
	return list
}

// Pile is one pile of the schedule.
type Pile struct {
	ID, Path, Mark                string
	Type, Rig, Circuit, Criterion string
	WorkingLoad                   Given[quantity.Force]
	Platform, Founding, Cutoff    Given[quantity.Length]
	ExpectedToe, LeastToe         Given[quantity.Length]
	StickUp, East, North          Given[quantity.Length]
	Rake                          Given[quantity.Ratio] // off the vertical
	Group                         string
	Rank                          int // preference in the order of pressing; 0 where none is stated
	SoftDepth, PreBored           Given[quantity.Length]
	Follower                      string // "yes", "no" or blank
}

// Toe is the level that the toe is expected at: the founding level where no
// other is stated.
func (p Pile) Toe() Given[quantity.Length] {
	if p.ExpectedToe.State != Blank {
		return p.ExpectedToe
	}
	return p.Founding
}

// Pile returns the pile with this id.
func (j Job) Pile(id string) (p Pile, ok bool) {
	n, path := j.thing("piles", id)
	if n == nil {
		return Pile{}, false
	}
	p = Pile{ID: id, Path: path, Mark: n.Get("mark").Text(), Type: n.Get("type").Text(), Rig: n.Get("rig").Text(),
		Circuit: n.Get("circuit").Text(), Criterion: n.Get("criterion").Text(), Follower: n.Get("follower").Text()}
	at := reader{n, path}
	p.ExpectedToe, p.LeastToe, p.StickUp = at.length("expectedToe"), at.length("leastToe"), at.length("stickUp")
	p.East, p.North = at.length("east"), at.length("north")
	p.Rake, p.Group = at.ratio("rake"), n.Get("group").Text()
	p.Rank, _ = count(n.Get("rank"))
	p.SoftDepth = given[quantity.Length](n.Get("softDepth"), path, "softDepth", quantity.Lengths)
	p.PreBored = given[quantity.Length](n.Get("preBored"), path, "preBored", quantity.Lengths)
	p.WorkingLoad = given[quantity.Force](n.Get("workingLoad"), path, "workingLoad", quantity.Forces)
	p.Platform = given[quantity.Length](n.Get("platform"), path, "platform", quantity.Lengths)
	p.Founding = given[quantity.Length](n.Get("founding"), path, "founding", quantity.Lengths)
	p.Cutoff = given[quantity.Length](n.Get("cutoff"), path, "cutoff", quantity.Lengths)
	return p, true
}
