// Package segment makes a pile up from stock lengths.
//
// It answers two questions: how long the pile must be ([HeadAtSet], [Need]),
// and which pieces of the stock make that length at the least cost ([Best],
// [Alternatives]).
//
// The make-up is computed in whole tenths of a millimetre, int64, so that 6.1 m
// is 61000 and sums are exact; [NeedTenths] and [PieceTenths] convert. The
// answer is a proven optimum, never a guess: where it cannot be proven within a
// fixed effort, the answer is an error.
//
// Covered: limited and unlimited counts, an extra cost a piece, a price of a
// joint, a limit on the number of pieces, a stated order among equals. Not
// covered: which piece comes first in the ground, roles (starter, middle, top),
// where joints may lie, the order list of a whole job, reuse of off-cuts.
package segment
