package segment_test

import (
	"math/rand"
	"slices"
	"strings"
	"testing"

	. "gaugewright/calc/segment"
)

// awkward is a stock of lengths in odd tenths of a millimetre between 3 and
// 15 m, where hardly any sum meets another.
func awkward(lines int, metres int64) (int64, []Piece, Terms) {
	rnd := rand.New(rand.NewSource(4))
	stock := make([]Piece, lines)
	for i := range stock {
		stock[i] = Piece{Length: 3*m + rnd.Int63n(12*m), Count: Unlimited}
	}
	return metres*m - 3217, stock, Terms{JointPrice: DefaultJoint, MaxPieces: DefaultPieces}
}

func lengths(count int, metres ...float64) []Piece {
	stock := make([]Piece, len(metres))
	for i, l := range metres {
		stock[i] = Piece{Length: int64(l*m + 0.5), Count: count}
	}
	return stock
}

type load struct {
	name  string
	need  int64
	stock []Piece
	terms Terms
}

func loads() []load {
	usual := Terms{JointPrice: DefaultJoint, MaxPieces: DefaultPieces}
	twelve := Terms{JointPrice: DefaultJoint, MaxPieces: 12}
	list := []load{
		{"60m/6 lengths", 587300, lengths(Unlimited, 12, 11, 10, 9, 8, 6), usual},
		{"60m/6 lengths/limited", 587300, lengths(2, 12, 11, 10, 9, 8, 6), twelve},
		{"60m/6 lengths/free joints", 587300, lengths(Unlimited, 12, 11, 10, 9, 8, 6), Terms{0, 12}},
		{"150m/12 lengths", 1487300, lengths(Unlimited, 15, 14, 13.5, 13, 12.5, 12, 11, 10, 9, 8, 7, 6), usual},
		{"150m/12 lengths/limited", 1487300, lengths(2, 15, 14, 13.5, 13, 12.5, 12, 11, 10, 9, 8, 7, 6), twelve},
		{"150m/12 lengths/free joints", 1487300, lengths(Unlimited, 15, 14, 13.5, 13, 12.5, 12, 11, 10, 9, 8, 7, 6), Terms{0, 20}},
		{"150m/12 lengths/shortest first", 1487300, lengths(Unlimited, 6, 7, 8, 9, 10, 11, 12, 12.5, 13, 13.5, 14, 15), usual},
	}
	for _, a := range []struct {
		name   string
		lines  int
		metres int64
	}{{"60m/6 odd lengths", 6, 60}, {"150m/12 odd lengths", 12, 150}} {
		need, stock, terms := awkward(a.lines, a.metres)
		list = append(list, load{a.name, need, stock, terms})
		limited := append([]Piece(nil), stock...)
		for i := range limited {
			limited[i].Count = 3
		}
		list = append(list, load{a.name + "/limited", need, limited, terms})
		list = append(list, load{a.name + "/free joints", need, limited, Terms{0, 12}})
		dear := append([]Piece(nil), stock...)
		for i := range dear {
			dear[i].Extra = int64(i*3777) % 9000
		}
		list = append(list, load{a.name + "/extra costs", need, dear, terms})
		// One length off the grid of the others: remainders help little.
		grid := append([]Piece(nil), stock...)
		for i := range grid {
			grid[i].Length -= grid[i].Length % 5000
		}
		grid[len(grid)/2].Length += 37
		list = append(list, load{a.name + "/one off the grid", need, grid, terms})
	}
	return list
}

func BenchmarkBest(b *testing.B) {
	for _, l := range loads() {
		b.Run(l.name, func(b *testing.B) {
			b.ReportAllocs()
			steps := 0
			for b.Loop() {
				best, err := Best(l.need, l.stock, l.terms)
				if err != nil {
					b.Fatal(err)
				}
				steps = best.Steps
			}
			b.ReportMetric(float64(steps), "states")
		})
	}
}

// ruledLoads are piles on which every rule binds: the make-up that is cheapest
// without rules keeps none of them in any order, or only by another sequence.
func ruledLoads() []load {
	var list []load
	for _, l := range loads() {
		if l.terms.MaxPieces > 12 {
			l.terms.MaxPieces = 12
		}
		limited := slices.Clone(l.stock)
		for i := range limited {
			limited[i].Role = []Role{Anywhere, Middle, Middle, Top, Anywhere, Starter}[i%6]
		}
		list = append(list, l, load{l.name + "/roles", l.need, limited, l.terms})
	}
	return list
}

// BenchmarkRules takes, for each load, ten piles with all rules of
// [JointRules] at once and different strata and neighbours.
func BenchmarkRules(b *testing.B) {
	for _, l := range ruledLoads() {
		b.Run(l.name, func(b *testing.B) {
			b.ReportAllocs()
			rnd := rand.New(rand.NewSource(8))
			var piles []JointRules
			for len(piles) < 10 {
				piles = append(piles, heavyRules(rnd, l.need))
			}
			most, at := 0, 0
			for b.Loop() {
				best, err := piles[at%10].Best(l.need, l.stock, l.terms)
				if err != nil && !strings.HasPrefix(err.(*InputError).Code, "segment.stopped.") {
					b.Fatal(err)
				}
				most = max(most, best.Steps)
				at++
			}
			b.ReportMetric(float64(most), "states")
		})
	}
}

// BenchmarkOrder makes the order list of a whole job.
func BenchmarkOrder(b *testing.B) {
	for _, job := range bigJobs() {
		piles, stock, terms := job.draw(1)
		b.Run(job.name, func(b *testing.B) {
			b.ReportAllocs()
			gap := 0.0
			for b.Loop() {
				o, err := OrderList(piles, stock, terms)
				if err != nil {
					b.Fatal(err)
				}
				gap = float64(o.Gap())
			}
			b.ReportMetric(100*gap, "%gap")
		})
	}
}

// BenchmarkEffortLimit is the longest that a make-up can take.
func BenchmarkEffortLimit(b *testing.B) {
	stock := misfit()
	for b.Loop() {
		if _, err := Best(90*m+1, stock, Terms{JointPrice: 0, MaxPieces: 40}); err == nil {
			b.Fatal("proven")
		}
	}
}
