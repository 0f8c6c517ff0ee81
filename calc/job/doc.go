// Package job gives the document tree its meaning: which names a job file has,
// what may stand there, and typed views of it by path.
//
// The tree is the truth and the views are read from it; nothing is stored
// twice. What is *stated* (loads, levels, rigs, gauges, stock, criteria) stands
// in "now". What *happened* (drives, holds, surveyed levels) stands in
// "records", which only grow.
//
// # Tables
//
// Schema 1 is a set of tables of [Field]: one file for each topic of "now"
// (field_rig.go, field_pile.go, ...), recordkind.go for the kinds of records
// with their columns and events, outside.go for sittings, signatures and the
// rest. [Check], [FieldAt] and the published JSON Schema ([FileSchema]) are made
// from them, so a field is added by one line there. Names that the tables do
// not know are kept in the tree untouched.
//
// Typed views exist where something computes with them; records have accessors
// for all their lines and events ([Record]).
//
// examples/FORMAT.md tells a stranger what stands here.
package job
