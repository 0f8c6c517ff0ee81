// Package head says what happens at the pile head after pressing: where to
// saw, how long the off-cut is, by how much bars are short, how high a low head
// must be built up.
//
// Levels are in m on the job's datum, up positive. The cut-off level is the top
// of the trimmed concrete with the cap embedment included; bars stand above it
// by the bar projection, so the saw goes in at the cut-off level plus the
// projection and the concrete around the bars is broken down to the cut-off.
//
// Covered: cut-off and build-up of one pile. Not covered: release to cut after
// the heave check, positions and tolerances, the cap, reuse of off-cuts, steel
// plates and welds of tubes, prestress lost near the new end.
package head
