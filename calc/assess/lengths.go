package assess

import (
	"strconv"

	"gaugewright/calc/head"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Lengths are the lengths of one pile type for payment.
type Lengths struct {
	Type                         string // id
	Piles, Expected              int    // of them from a head that is only expected
	Pitched, Pressed, Below, Cut *Number
	Joints                       int
}

// Lengths adds up the lengths of the piles of each type, in the order in which
// the types come first. left counts the piles that have none yet. With a book
// the sums leave their working under "lengths/".
func (j *Job) Lengths(b *working.Book) (list []Lengths, left int) {
	type columns struct{ pitched, pressed, below, cut []working.In }
	place, sums := map[string]int{}, []columns(nil)
	add := func(to *[]working.In, id string, step string, n *Number) {
		if n != nil {
			*to = append(*to, working.In{V: n.V, Ref: id + "/" + step})
		}
	}
	for _, id := range j.Piles() {
		a, _ := j.Pile(id, nil)
		if a.Segments.Total == nil || a.Head.Below == nil {
			left++
			continue
		}
		p, _ := j.Job.Pile(id)
		at, known := place[p.Type]
		if !known {
			at = len(list)
			place[p.Type], list, sums = at, append(list, Lengths{Type: p.Type}), append(sums, columns{})
		}
		l, s := &list[at], &sums[at]
		l.Piles++
		if !a.Head.Surveyed {
			l.Expected++
		}
		l.Joints += a.Segments.Joints
		add(&s.pitched, id, "total", a.Segments.Total)
		add(&s.pressed, id, "head.pressed", a.Head.Pressed)
		add(&s.below, id, "head.below", a.Head.Below)
		add(&s.cut, id, "head.cut", a.Head.Cut)
	}
	b = b.Under("lengths/")
	for i := range list {
		name := strconv.Itoa(i+1) + "."
		sum := func(what string, values []working.In) *Number {
			if len(values) == 0 {
				return nil
			}
			of := total(b, name+what, values)
			return &Number{V: float64(of.V), Unit: quantity.Must("m"), Decimals: 2, Ref: of.Ref}
		}
		list[i].Pitched, list[i].Pressed = sum("pitched", sums[i].pitched), sum("pressed", sums[i].pressed)
		list[i].Below, list[i].Cut = sum("below", sums[i].below), sum("cut", sums[i].cut)
	}
	return list, left
}

// summands is how many values one step adds: more are added in parts, so that
// each step can be read.
const summands = 40

func total(b *working.Book, name string, values []working.In) working.Of[quantity.Length] {
	for part := 1; len(values) > summands; part++ {
		var parts []working.In
		for from := 0; from < len(values); from += summands {
			some := values[from:min(from+summands, len(values))]
			parts = append(parts, added(b, name+".part"+strconv.Itoa(part)+"."+strconv.Itoa(from/summands+1), some).In())
		}
		values = parts
	}
	return added(b, name, values)
}

func added(b *working.Book, name string, values []working.In) working.Of[quantity.Length] {
	sum := 0.0
	for _, v := range values {
		sum += v.V
	}
	return working.Put(b, head.SumRule(len(values)), name, quantity.Length(sum), values...)
}
