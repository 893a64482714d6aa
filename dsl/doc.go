// Package dsl turns pattern source into a tree of sentences and back.
//
// In: the bytes of one .seam file. Out: a [File] whose sentences carry typed
// nodes, the comments where their authors put them, and findings for what could
// not be read. It knows the words of the language and no sewing rule.
//
// A file is cut up in three passes, each of which always succeeds:
//
//   - [scan] makes tokens; what belongs to no token becomes one of kind Bad;
//   - [group] folds tokens into sentences by line ends, braces and semicolons,
//     so that a mistake spoils one sentence and nothing around it;
//   - the words of each sentence are read by the grammar of its kind (the files
//     grammar*.go), which is written in participle's notation. Readers made of it
//     (reader.go) take what fits; what does not is given to participle, which says
//     why. The smallest nodes are read by hand (leaf.go).
//
// Sentences come first because participle stops at the first error: with one
// parse for each sentence every mistake of a file is reported in one run, and
// the formatter can print even a sentence that nobody understands.
//
// Two things soften a mistake. A slip with one sensible meaning (5/8", a misspelt
// first word) is reported and read as what was meant. Where braces do not add up,
// and only there, indentation tells which one is missing (recover.go).
//
// [Format] prints the tree in its one form. It works from tokens alone, and gives
// up where it cannot be sure where something ends.
package dsl

//go:generate go run ./internal/readers
