package assess

import (
	"math"
	"strconv"

	"gaugewright/calc/basis"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/segment"
	"gaugewright/calc/working"
)

// Order is the order list of a job: what to have in the yard so that every
// pile that is not pressed yet can be made up.
type Order struct {
	Lines []OrderLine
	Piles []OrderPile
	// Left are the piles without a make-up, with why. Done is how many were left
	// out because their heads are surveyed: their segments are in the ground.
	Left []OrderPile
	Done int

	Pieces, Joints, Missing int
	Total, OffCut           *Number
	Cost, Bound, Gap        *Number // bound and gap only where they hold, see Shared
	Proven, Lacking         bool
	Shared                  bool // lines of limited stock served pile types with other stock in turn: no bound
	Reused                  []OrderReuse
	Saved                   *Number
	Close                   []string // marks of piles whose joints lie too near a neighbour's
}

// OrderLine is one length of the stock.
type OrderLine struct {
	Name                     string
	Length, Ordered, Missing *Number
	Taken, Spares, Count     int // Count is what the yard has, -1 where it is not limited
}

// OrderPile is a pile with its make-up from the shared stock.
type OrderPile struct {
	ID, Mark string
	Pieces   []Piece
	OffCut   quantity.Length
	Needs    []string
	Problem  *Note
}

// OrderReuse is an off-cut that is used again.
type OrderReuse struct {
	From, To string // marks
	Length   *Number
}

// Order makes the order list. With a book its numbers leave their working under
// "order/".
func (j *Job) Order(b *working.Book) Order {
	o := Order{}
	runs := map[string]*orderRun{}
	var list []*orderRun
	for _, id := range j.Piles() {
		p, _ := j.Job.Pile(id)
		if _, surveyed := j.levels[id]; surveyed {
			o.Done++
			continue
		}
		w := &judge{Job: j, pile: p, answer: &Answer{ID: id, Governs: -1}}
		w.gather()
		pile, ok := w.orderPile()
		if !ok {
			s := w.answer.Segments
			left := OrderPile{ID: id, Mark: p.Mark, Needs: s.Needs}
			if len(s.Notes) > 0 {
				left.Problem = &s.Notes[0]
			}
			o.Left = append(o.Left, left)
			continue
		}
		yard := j.yard(p.Type)
		run := runs[yard.key()]
		if run == nil {
			run = &orderRun{yard: yard}
			runs[yard.key()], list = run, append(list, run)
		}
		run.piles, run.views, run.stagger = append(run.piles, pile), append(run.views, p), max(run.stagger, pile.Rules.Stagger)
	}
	made := &ordering{Job: j, book: b.Under("order/"), order: &o, taken: map[string]int{}}
	made.solve(list)
	for _, r := range list {
		made.add(r)
	}
	made.finish()
	return o
}

// orderPile is the pile in the terms of package segment; ok is false while it
// lacks something, which stands in the answer.
func (w *judge) orderPile() (p segment.JobPile, ok bool) {
	if w.raking() {
		return p, false
	}
	need, ok := w.neededLength()
	if !ok {
		return p, false
	}
	tenths, err := segment.NeedTenths(need.V)
	if err != nil {
		w.segmentFault(err)
		return p, false
	}
	toe := w.pile.Toe()
	jt, ok := w.jointing(toe)
	if !ok {
		return p, false
	}
	if len(w.yard(w.pile.Type).pieces) == 0 {
		w.answer.Segments.Needs = []string{"field.stock.length"}
		return p, false
	}
	jt.rules.Stagger = jt.stated.Stagger.V
	p = segment.JobPile{Need: tenths, MaxPieces: jt.maxPieces, Rules: jt.rules, Stage: w.pile.Rank}
	if saw, err := segment.NeedTenths(w.pile.Cutoff.V + w.pileType.Bars.V - toe.V); err == nil {
		p.Saw = saw
	}
	return p, true
}

// key names the lines of a yard: types that may take the same lines are ordered
// together.
func (s stock) key() string {
	key := ""
	for _, line := range s.lines {
		key += line.Path + " "
	}
	return key
}

// orderRun are the piles that may take the same stock, and their order.
type orderRun struct {
	yard    stock
	piles   []segment.JobPile
	views   []job.Pile
	stagger quantity.Length
	got     segment.Order
	err     error
}

// beside names, for each pile, those before it that stand near.
func (r *orderRun) beside() {
	if r.stagger == 0 {
		return
	}
	near := basis.Figure("segment.neighbour")
	for i, a := range r.views {
		for k, b := range r.views[:i] {
			if a.East.Known() && a.North.Known() && b.East.Known() && b.North.Known() &&
				math.Hypot(float64(a.East.V-b.East.V), float64(a.North.V-b.North.V)) <= near {
				r.piles[i].Beside = append(r.piles[i].Beside, k)
			}
		}
	}
}

// ordering puts the orders of the runs together.
type ordering struct {
	*Job
	book         *working.Book
	order        *Order
	lines        []job.Stock
	taken        map[string]int // by the path of the line
	extra, saved int64
	offCut       int64
	total, bound int64
	lacking      bool
}

// solve makes the order of each run. Where all of them together find enough of
// every line they share, each has its best, and so has the job. Where not, they
// are served one after the other from what is left.
func (m *ordering) solve(list []*orderRun) {
	terms := m.OrderTerms()
	price, _ := (&judge{Job: m.Job}).jointPrice()
	by := segment.JobTerms{JointPrice: price, Spares: terms.Spares.V, Reuse: segment.Reuse{On: terms.Reuse}}
	if least, err := segment.PieceTenths(terms.Least.V); err == nil {
		by.Reuse.Least = least
	}
	if loss, err := segment.PieceTenths(terms.Loss.V); err == nil {
		by.Reuse.Loss = loss
	}
	taken, enough := map[string]int{}, true
	for _, r := range list {
		r.beside()
		r.got, r.err = segment.OrderList(r.piles, r.yard.pieces, by)
		for i, line := range r.got.Lines {
			at := r.yard.lines[i]
			taken[at.Path] += line.Taken
			// What one type alone lacks is missing either way.
			enough = enough && (!at.HasCount || taken[at.Path] <= at.Count || taken[at.Path] == line.Taken)
		}
	}
	if enough {
		return
	}
	m.order.Shared = true
	taken = map[string]int{}
	for _, r := range list {
		left := append([]segment.Piece(nil), r.yard.pieces...)
		for i := range left {
			if left[i].Count != segment.Unlimited {
				left[i].Count = max(0, left[i].Count-taken[r.yard.lines[i].Path])
			}
		}
		r.got, r.err = segment.OrderList(r.piles, left, by)
		for i, line := range r.got.Lines {
			taken[r.yard.lines[i].Path] += line.Taken
		}
	}
}

// add puts the order of a run to the others.
func (m *ordering) add(r *orderRun) {
	o, got := m.order, r.got
	for _, line := range r.yard.lines {
		if _, served := m.taken[line.Path]; !served {
			m.lines, m.taken[line.Path] = append(m.lines, line), 0
		}
	}
	if r.err != nil {
		note := (&judge{Job: m.Job}).faultNote(r.err)
		for _, p := range r.views {
			o.Left = append(o.Left, OrderPile{ID: p.ID, Mark: p.Mark, Problem: &note})
		}
		return
	}
	for i, made := range got.Piles {
		p := OrderPile{ID: r.views[i].ID, Mark: r.views[i].Mark}
		if made.Err != nil {
			note := (&judge{Job: m.Job, pile: r.views[i]}).faultNote(made.Err)
			p.Problem = &note
			o.Left = append(o.Left, p)
			continue
		}
		for _, line := range made.Makeup.Used() {
			piece := Piece{Count: made.Makeup.Counts[line]}
			if line < len(r.yard.lines) {
				piece.Length, piece.Name = stated(r.yard.lines[line].Length), r.yard.lines[line].Name
			} else {
				piece.Length = m.metres(got.Stock[line].Length)
			}
			p.Pieces = append(p.Pieces, piece)
		}
		p.OffCut = segment.Metres(made.Makeup.OffCut)
		o.Piles = append(o.Piles, p)
	}
	for i, line := range got.Lines {
		m.taken[r.yard.lines[i].Path] += line.Taken
	}
	for _, again := range got.Reused {
		o.Reused = append(o.Reused, OrderReuse{r.views[again.From].Mark, r.views[again.To].Mark, m.metres(again.Length)})
	}
	for _, i := range got.Close {
		o.Close = append(o.Close, r.views[i].Mark)
	}
	o.Pieces, o.Joints, o.Missing = o.Pieces+got.Pieces, o.Joints+got.Joints, o.Missing+got.Missing
	m.extra, m.saved, m.bound = m.extra+got.Extra, m.saved+got.Saved, m.bound+got.Bound
	m.offCut, m.total, m.lacking = m.offCut+got.OffCut, m.total+got.Total, m.lacking || got.Lacking
}

// metres is a sum that a search gave.
func (m *ordering) metres(tenths int64) *Number {
	return &Number{V: float64(segment.Metres(tenths)), Unit: quantity.Must("m"), Decimals: 2, Ref: "search:"}
}

func pieceCount(q working.Of[quantity.Ratio]) *Number {
	return &Number{V: float64(q.V), Unit: quantity.Must(""), Ref: q.Ref}
}

// finish writes the lines and the cost of the whole.
func (m *ordering) finish() {
	o, b := m.order, m.book
	if len(m.lines) == 0 {
		return
	}
	found := func(v float64) working.In { return working.In{V: v, Ref: "search:"} }
	terms := m.OrderTerms()
	spares := orFigure(b, terms.Spares, "segment.order.spares")
	for i, line := range m.lines {
		taken := m.taken[line.Path]
		n := segment.Ordered(taken, quantity.Ratio(spares.V))
		name := "line." + strconv.Itoa(i+1)
		l := OrderLine{Name: line.Name, Length: stated(line.Length), Taken: taken, Spares: n - taken, Count: -1}
		l.Ordered = pieceCount(working.Put(b, segment.OrderedRule, name+".ordered", quantity.Ratio(n), found(float64(taken)), spares))
		if line.HasCount {
			l.Count = line.Count
			l.Missing = pieceCount(working.Put(b, segment.MissingRule, name+".missing", quantity.Ratio(max(0, n-line.Count)),
				working.In{V: l.Ordered.V, Ref: l.Ordered.Ref}, working.In{V: float64(line.Count), Ref: line.Path + "/count"}))
		}
		o.Lines = append(o.Lines, l)
	}
	o.Total, o.OffCut = m.metres(m.total), m.metres(m.offCut)
	price, priceIn := (&judge{Job: m.Job, book: b}).jointPrice()
	before := m.offCut + price*int64(o.Joints) + m.extra
	cost := working.Put(b, segment.JobCostRule, "cost", segment.Metres(before), found(float64(segment.Metres(m.offCut))), priceIn, found(float64(o.Joints)), found(float64(segment.Metres(m.extra))))
	o.Cost, o.Lacking = m.metres(before), m.lacking
	o.Cost.Ref = cost.Ref
	if m.saved > 0 {
		o.Saved = m.metres(m.saved)
	}
	if o.Shared {
		return
	}
	bound := m.metres(m.bound)
	k := before + m.saved
	o.Bound, o.Proven = bound, k <= m.bound
	if o.Proven || m.saved > 0 {
		return
	}
	working.Prove(b, segment.BoundRule, "cost.bound", cost.Ref, cost.In(), found(bound.V))
	gap := working.Put(b, segment.GapRule, "gap", quantity.Ratio((cost.In().V-bound.V)/cost.In().V), cost.In(), found(bound.V))
	o.Gap = &Number{V: float64(gap.V), Unit: quantity.Must("%"), Decimals: 1, Ref: gap.Ref}
}
