package desk

import (
	"math"
	"sort"
	"strconv"
	"strings"
	"unicode/utf8"

	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/quantity"
	"gaugewright/calc/words"
)

// Measures of the drawing [px]: the least distance between the centres of two
// piles that are drawn one by one, the margin around all centres, the size of a
// mark's shape and of its letters.
const (
	planNear   = 24
	planEdge   = 32
	planShape  = 20
	planLetter = 10
	planLine   = 18
)

// An answer holds so many piles and groups at most: it stays below 64 kB.
const (
	mostPlaced = 250
	mostGroups = 120
	mostName   = 24 // characters of a mark or a group's name
)

// planStates are the states in the order in which they are counted.
var planStates = []assess.State{assess.Open, assess.Closed, assess.LimitMissing, assess.Incomplete, assess.Refused}

// spot is a pile of the plan.
type spot struct {
	id, mark    string
	state       assess.State
	east, north float64 // [m]
	x, y        float64 // in the drawing, y downward [px]
}

// crowd is a group of piles, or those of none.
type crowd struct {
	id, name string
	count    map[assess.State]int
	spots    []int // of the placed ones
}

// showPlan draws the site from above, north up, into width times height: each
// pile with coordinates, or the rectangles around the groups where piles would
// lie nearer to one another than a finger can tell apart. Counts are over all
// piles. x, y and sizes are fractions of the drawing, for drawing only.
func (f *file) showPlan(r *document.Node) *document.Node {
	width, height := sizeOf(r, "width", 640), sizeOf(r, "height", 480)
	spots, crowds, total := f.gatherPlan()
	count := len(f.pilesInOrder())
	feet := f.inFeet(spots)
	var says []string
	if lost := count - len(spots); lost > 0 {
		says = append(says, words.Say("plan.lost", itoa(lost), itoa(count)))
	}
	piles, boxes, bar := document.NewList(), document.NewList(), document.NewNull()
	if len(spots) > 0 {
		var extent string
		height, bar, extent = f.layOut(spots, width, height, feet)
		says = append(says, extent)
		if dense := f.dense(spots, feet); dense != "" {
			says = append(says, dense)
			boxes = planBoxes(crowds, spots, width, height)
		} else {
			piles = planPiles(spots, width, height)
		}
	}
	states := document.NewList()
	for _, s := range planStates {
		if total[s] > 0 {
			states.Append(newObject().with("state", text(string(s))).with("says", text(countSays(s, total[s]))).Node)
		}
	}
	groups := document.NewList()
	for i, c := range crowds {
		if c.id == "" && i == 0 {
			break // no group at all: the states say the same
		}
		if i == mostGroups {
			says = append(says, words.Say("plan.more", itoa(mostGroups), itoa(len(crowds))))
			break
		}
		groups.Append(newObject().with("name", text(c.name)).with("says", text(c.says())).Node)
	}
	return okay().with("title", text(f.job().Title())).with("width", whole(int(width))).with("height", whole(int(math.Ceil(height)))).
		with("piles", piles).with("boxes", boxes).with("bar", bar).with("lines", texts(says)).with("states", states).with("groups", groups).Node
}

// sizeOf reads a measure of the drawing within sensible bounds.
func sizeOf(r *document.Node, name string, otherwise int) float64 {
	n, ok := r.Get(name).Int()
	if !ok {
		n = otherwise
	}
	return float64(max(160, min(n, 4000)))
}

// gatherPlan lists the piles that have a place, counts all of them by group and
// state, and orders the groups by name; piles without a group come last.
func (f *file) gatherPlan() (spots []spot, crowds []*crowd, total map[assess.State]int) {
	j := f.judge()
	known := map[string]*crowd{}
	for _, id := range j.Groups() {
		c := &crowd{id: id, name: shortTo(named(j.GroupName(id)), mostName), count: map[assess.State]int{}}
		known[id], crowds = c, append(crowds, c)
	}
	none := &crowd{name: words.Say("plan.none"), count: map[assess.State]int{}}
	crowds, total = append(crowds, none), map[assess.State]int{}
	for _, id := range f.pilesInOrder() {
		p, _ := j.Job.Pile(id)
		state, _ := j.State(id)
		c := known[p.Group]
		if c == nil {
			c = none
		}
		c.count[state]++
		total[state]++
		if p.East.Known() && p.North.Known() {
			c.spots = append(c.spots, len(spots))
			spots = append(spots, spot{id: id, mark: shortTo(named(p.Mark), mostName), state: state, east: float64(p.East.V), north: float64(p.North.V)})
		}
	}
	used := crowds[:0]
	for _, c := range crowds {
		if c != none || len(c.count) > 0 {
			used = append(used, c)
		}
	}
	return spots, used, total
}

// says counts the piles of a group by state.
func (c *crowd) says() string {
	var list []string
	for _, s := range planStates {
		if c.count[s] > 0 {
			list = append(list, countSays(s, c.count[s]))
		}
	}
	if len(list) == 0 {
		return words.Say("plan.empty")
	}
	return strings.Join(list, ", ")
}

func countSays(s assess.State, n int) string {
	return words.Say("plan.state", words.Say("state."+string(s)), itoa(n))
}

// inFeet says whether the first place is stated in feet or inches.
func (f *file) inFeet(spots []spot) bool {
	if len(spots) == 0 {
		return false
	}
	p, _ := f.judge().Job.Pile(spots[0].id)
	unit := p.East.Stated.Unit.Symbol
	return unit == "ft" || unit == "in"
}

func (f *file) planLength(v float64, decimals int, feet bool) string {
	u := quantity.Must("m")
	if feet {
		u = quantity.Must("ft")
	}
	return quantity.PrintIn(v, u, decimals, f.job().Sign()) + " " + u.Symbol
}

// layOut places the piles in the drawing at one scale both ways and returns the
// height that this takes, the scale bar, and how large the site is in words. A
// single place has no scale.
func (f *file) layOut(spots []spot, width, most float64, feet bool) (height float64, bar *document.Node, extent string) {
	west, east, south, north := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, s := range spots {
		west, east, south, north = min(west, s.east), max(east, s.east), min(south, s.north), max(north, s.north)
	}
	across, up := east-west, north-south
	scale := min((width-2*planEdge)/across, (most-2*planEdge)/up) // [px/m]
	if math.IsInf(scale, 1) {
		scale = 0
	}
	height = float64(scale*up) + 2*planEdge
	for i := range spots {
		s := &spots[i]
		s.x = width/2 + float64(scale*(s.east-(west+east)/2))
		s.y = planEdge + float64(scale*(north-s.north))
	}
	if scale == 0 {
		return height, document.NewNull(), words.Say("plan.point")
	}
	length, decimals := roundLength(width/3/scale, feet)
	bar = newObject().with("size", fraction(scale*length/width)).with("says", text(f.planLength(length, decimals, feet))).Node
	return height, bar, words.Say("plan.extent", f.planLength(across, 1, feet), f.planLength(up, 1, feet))
}

// roundLength is the largest of 1, 2, 5 times a power of ten, in metres or in
// feet, that is not longer than most [m], and the decimals to write it with.
func roundLength(most float64, feet bool) (length float64, decimals int) {
	u := quantity.Must("m")
	if feet {
		u = quantity.Must("ft")
	}
	power := int(math.Floor(math.Log10(u.From(most))))
	ten := math.Pow10(power)
	length = ten
	for _, n := range []float64{2, 5} {
		if float64(n*ten) <= u.From(most) {
			length = n * ten
		}
	}
	return u.Coherent(length), max(0, -power)
}

// dense says why piles cannot be drawn one by one; blank where they can.
func (f *file) dense(spots []spot, feet bool) string {
	if len(spots) > mostPlaced {
		return words.Say("plan.many", itoa(len(spots)))
	}
	order := make([]int, len(spots))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return spots[order[a]].x < spots[order[b]].x })
	for i, a := range order {
		for _, b := range order[i+1:] {
			s, t := spots[a], spots[b]
			if t.x-s.x >= planNear {
				break
			}
			if math.Hypot(t.x-s.x, t.y-s.y) < planNear {
				if a > b {
					s, t = t, s
				}
				apart := math.Hypot(t.east-s.east, t.north-s.north)
				return words.Say("plan.dense", s.mark, t.mark, f.planLength(apart, 2, feet))
			}
		}
	}
	return ""
}

// rectangle is a part of the drawing [px].
type rectangle struct{ left, top, right, bottom float64 }

func (a rectangle) meets(b rectangle) bool {
	return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
}

// letters is about what a line of text takes, its middle at x, y.
func letters(s string, x, y float64) rectangle {
	half := float64(utf8.RuneCountInString(s)*planLetter) / 2
	return rectangle{x - half, y - planLine/2, x + half, y + planLine/2}
}

// room says whether a text fits into the drawing without lying on anything.
func room(r rectangle, width, height float64, taken []rectangle) bool {
	if r.left < 0 || r.top < 0 || r.right > width || r.bottom > height {
		return false
	}
	for _, other := range taken {
		if r.meets(other) {
			return false
		}
	}
	return true
}

// planPiles writes piles one by one, each with its mark where there is room
// below its shape.
func planPiles(spots []spot, width, height float64) *document.Node {
	taken := make([]rectangle, 0, 2*len(spots))
	for _, s := range spots {
		taken = append(taken, rectangle{s.x - planShape/2, s.y - planShape/2, s.x + planShape/2, s.y + planShape/2})
	}
	list := document.NewList()
	for _, s := range spots {
		mark := letters(s.mark, s.x, s.y+planShape/2+planLine/2)
		fits := room(mark, width, height, taken)
		if fits {
			taken = append(taken, mark)
		}
		list.Append(newObject().with("id", text(s.id)).with("mark", text(s.mark)).with("state", text(string(s.state))).
			with("x", fraction(s.x/width)).with("y", fraction(s.y/height)).with("room", yes(fits)).Node)
	}
	return list
}

// planBoxes writes the rectangle around the piles of each group, and how many
// there are: in its middle, else above or below it, where there is room.
func planBoxes(crowds []*crowd, spots []spot, width, height float64) *document.Node {
	const around = 5
	var taken []rectangle
	list := document.NewList()
	for i, c := range crowds {
		if len(c.spots) == 0 || i >= mostGroups {
			continue
		}
		r := rectangle{width, height, 0, 0}
		for _, at := range c.spots {
			s := spots[at]
			r = rectangle{min(r.left, s.x-around), min(r.top, s.y-around), max(r.right, s.x+around), max(r.bottom, s.y+around)}
		}
		count := words.Say("plan.box", c.name, itoa(len(c.spots)))
		half := letters(count, 0, 0).right
		x, y, says := max(half, min((r.left+r.right)/2, width-half)), 0.0, ""
		for _, y = range []float64{(r.top + r.bottom) / 2, r.top - planLine/2, r.bottom + planLine/2} {
			if label := letters(count, x, y); room(label, width, height, taken) {
				taken, says = append(taken, label), count
				break
			}
		}
		list.Append(newObject().with("x", fraction(r.left/width)).with("y", fraction(r.top/height)).
			with("wide", fraction((r.right-r.left)/width)).with("high", fraction((r.bottom-r.top)/height)).
			with("says", text(says)).with("at", fraction(x/width)).with("down", fraction(y/height)).Node)
	}
	return list
}

func fraction(v float64) *document.Node {
	return document.NewNumber(strconv.FormatFloat(v, 'f', 4, 64))
}
