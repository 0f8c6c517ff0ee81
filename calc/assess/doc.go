// Package assess judges a whole job, pile by pile. It is the one place that
// calls all the domain packages, and it computes nothing itself that they
// could: it reads the typed views of a job, hands values on, keeps the steps
// of the working where a book is given, and says what is still needed.
//
// Sentences are not made here. What is to be said stands as a code with its
// arguments; calc/words has the sentence.
package assess
