// Package job gives the document tree its meaning: which names a job file has,
// what may stand there, and typed views of it by path.
//
// The tree is the truth and the views are read from it; nothing is stored
// twice. What is *stated* (loads, levels, rigs, gauges, stock, criteria) stands
// in "now". What *happened* stands in "records", which only grow.
//
// This is schema 1 as far as the product computes with it. Names that this
// package does not know are kept in the tree untouched.
package job
