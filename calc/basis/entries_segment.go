package basis

import "gaugewright/calc/quantity"

// segmentEntries are figures and formulas of joints and of the order list of a
// job.
var segmentEntries = []Entry{
	{ID: "segment.joint.level", Value: "Z_j = Z_toe + l_1 + ... + l_j", Formula: true, Document: geometry, Edition: none,
		Clause: "levels of joints with the toe at the founding level", Mark: Practice},
	{ID: "segment.joint.stopToe", Value: "Z_t = Z_p + h_s - (l_1 + ... + l_j)", Formula: true, Document: geometry, Edition: none,
		Clause: "the head of the piece in the ground stands at the splice height above the platform", Mark: Practice},
	{ID: "segment.joint.clear", Value: "|Z_j - Z_c| >= x", Formula: true, Document: practice, Edition: none,
		Clause: "a joint is kept away from the cut, below and above it; the distance is the designer's", Mark: Practice},
	{ID: "segment.joint.last", Value: "Z_c - Z_j >= y", Formula: true, Document: practice, Edition: none,
		Clause: "no short stub below the cap; asked of joints below cut-off, the piece above the cut goes with it", Mark: Practice},
	{ID: "segment.joint.belowBars", Value: "Z_j < Z_c", Formula: true, Document: own, Edition: none,
		Clause: "bars that are left standing belong to the piece that the cut passes", Mark: Own},
	{ID: "segment.joint.aboveBars", Value: "Z_j >= Z_c + l_p", Formula: true, Document: own, Edition: none,
		Clause: "bars that are left standing do not end in a joint", Mark: Own},
	{ID: "segment.joint.noJoint", Value: "|Z_j - (Z_1 + Z_2)/2| > (Z_1 - Z_2)/2", Formula: true, Document: practice, Edition: none,
		Clause: "no joint in a stratum that the designer names; its boundaries belong to it", Mark: Practice},
	{ID: "segment.joint.noStop", Value: "|Z_t - (Z_1 + Z_2)/2| > (Z_1 - Z_2)/2", Formula: true, Document: practice, Edition: none,
		Clause: "no stop for a splice with the toe in a stratum that the designer names, where the pile may not start again; its boundaries belong to it", Mark: Practice},
	{ID: "segment.joint.stagger", Value: "|Z_j - Z_n| >= s", Formula: true, Document: practice, Edition: none,
		Clause: "joints of neighbouring piles are not at one level", Mark: Practice},
	{ID: "segment.joint.most", Value: "N - 1 <= n", Formula: true, Document: practice, Edition: none,
		Clause: "a stated most of joints in one pile", Mark: Practice},
	{ID: "segment.shift", Value: "L_s = L_n + d, d = -1.0, -0.5, 0.5 and 1.0 m", Formula: true, Document: own, Edition: none,
		Clause: "what a founding level so much higher or deeper would take", Mark: Own},
	shiftFigure("-10000", "-1.0 m"), shiftFigure("-5000", "-0.5 m"), shiftFigure("5000", "0.5 m"), shiftFigure("10000", "1.0 m"),

	{ID: "segment.neighbour", Value: "3.0 m", Dim: quantity.Lengths, Document: own, Edition: none,
		Clause: "piles of an order list that stand no farther apart are neighbours, whose joints are kept apart where a stagger is stated", Mark: Own},
	{ID: "segment.order.spares", Value: "0 %", Dim: quantity.Dimensionless, Document: own, Edition: none,
		Clause: "pieces ordered beyond those that the piles take; editable", Mark: Own},
	{ID: "segment.order.ordered", Value: "n_o = up[n (1 + s)]", Formula: true, Document: own, Edition: none,
		Clause: "spares are rounded up for each length by itself", Mark: Own},
	{ID: "segment.order.cost", Value: "K = sum of off-cuts + j (joints) + extra costs", Formula: true, Document: own, Edition: none,
		Clause: "the cost of a make-up, summed over the piles; the counts of the stock are shared", Mark: Own},
	{ID: "segment.order.bound", Value: "B = max over prices >= 0 of (cheapest make-ups with prices - prices times counts)", Formula: true,
		Document: "textbooks of mathematical optimisation", Edition: "recalled", Clause: "Lagrange's bound of a problem with shared resources", Mark: Memory},
	{ID: "segment.order.reuse", Value: "l_r = min(L - h_c, l) - w", Formula: true, Document: own, Edition: none,
		Clause: "an off-cut of the last piece stands first or last in a pile of a later stage, once; off unless asked for, not for prestressed piles", Mark: Own},
}

func shiftFigure(tenths, metres string) Entry {
	return Entry{ID: "segment.shift." + tenths, Value: metres, Dim: quantity.Lengths, Document: own, Edition: none,
		Clause: "about what a toe stops short or goes on in even ground", Mark: Own}
}
