package segment

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

var (
	jobCost  = working.Symbol{Name: "K", Dim: quantity.Lengths, Key: "jobCost"}
	jobBound = working.Symbol{Name: "B", Dim: quantity.Lengths, Key: "jobBound"}
	taken    = working.Symbol{Name: "n", Key: "piecesTaken"}
)

// The rules of the order list.
var (
	// OrderedRule is how many pieces of a length to order, [Ordered]. Inputs: n, s.
	OrderedRule = working.Rule{Key: "segment.order.ordered", Symbol: "n_o", Formula: "roundup(n*(1 + s), 1)",
		Inputs: []working.Symbol{taken, {Name: "s", Key: "spares"}}, Basis: "segment.order.ordered"}
	// MissingRule is how many pieces of a length the stock is short of. Inputs: n, n_s.
	MissingRule = working.Rule{Key: "segment.order.missing", Symbol: "n_m", Formula: "max(0, n - n_s)",
		Inputs: []working.Symbol{taken, {Name: "n_s", Key: "piecesInStock"}}, Basis: "arithmetic"}
	// JobCostRule is the cost of all make-ups of a job. Inputs: o, j, n_j, e.
	JobCostRule = working.Rule{Key: "segment.order.cost", Symbol: "K", Formula: "o + j*n_j + e",
		Inputs: []working.Symbol{
			{Name: "o", Dim: quantity.Lengths, Key: "jobOffCut"},
			{Name: "j", Dim: quantity.Lengths, Key: "jointPrice"},
			{Name: "n_j", Key: "jobJoints"},
			{Name: "e", Dim: quantity.Lengths, Key: "jobExtra"},
		}, Dim: quantity.Lengths, Decimals: 4, Basis: "segment.order.cost"}
	// GapRule is how far the cost may lie above the least, [Order.Gap]. Inputs: K, B.
	GapRule = working.Rule{Key: "segment.order.gap", Symbol: "g", Formula: "(K - B)/K",
		Inputs: []working.Symbol{jobCost, jobBound}, Decimals: 4, Basis: "segment.order.bound"}
	// BoundRule states that the cost is not below the bound. Inputs: K, B.
	BoundRule = working.Rule{Key: "segment.order.boundHolds", Formula: "K >= B",
		Inputs: []working.Symbol{jobCost, jobBound}, Basis: "segment.order.bound", Statement: true}
	// OffCutKeptRule is the length of an off-cut that is used again. Inputs: L, h_c, l, w.
	OffCutKeptRule = working.Rule{Key: "segment.order.offCutKept", Symbol: "l_r", Formula: "min(L - h_c, l) - w",
		Inputs: []working.Symbol{
			totalLength,
			{Name: "h_c", Dim: quantity.Lengths, Key: "sawHeight"},
			{Name: "l", Dim: quantity.Lengths, Key: "lastPiece"},
			{Name: "w", Dim: quantity.Lengths, Key: "offCutLoss"},
		}, Dim: quantity.Lengths, Decimals: 4, Basis: "segment.order.reuse"}
)
