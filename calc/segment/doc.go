// Package segment makes piles up from stock lengths.
//
// It answers these questions: how long the pile must be ([HeadAtSet], [Need]);
// which pieces of the stock make that length at the least cost, and in which
// order from the toe up ([Best], [Alternatives]); the same where joints may not
// lie everywhere ([JointRules]), with the rule that stops it where nothing keeps
// them all ([Stop]); what another founding level would take
// ([JointRules.Shifted]); and the same for all piles of a job from one limited
// stock ([OrderList]).
//
// The make-up is computed in whole tenths of a millimetre, int64, so that 6.1 m
// is 61000 and sums are exact; [NeedTenths] and [PieceTenths] convert. For one
// pile the answer is a proven optimum, never a guess: where it cannot be proven
// within a fixed effort, the answer is an error. For a job it stands beside a
// proven bound.
//
// Covered: limited and unlimited counts, an extra cost a piece, a price of a
// joint, a limit on the number of pieces, a stated order among equals, roles
// (starter, middle, top), where joints may lie and the toe may be while a splice
// is made. Not covered: what a joint bears.
package segment
