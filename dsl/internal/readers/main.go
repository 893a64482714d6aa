// Command readers writes the readers of the language from its grammar.
//
// In: the files grammar*.go of the package dsl, whose nodes carry their grammar in
// participle's notation. Out: reader.go, in which every node has a read that takes
// what its grammar takes, in the same order, without a parser that must be built
// first and without reflection. It knows no words of the language.
//
// Of participle's notation it knows what the grammar uses: literals, @ and @@,
// groups, alternatives, ?, *, and (?! …) before literals. Alternatives and groups
// are tried in order, and the first that fits is taken, as participle does it with
// unlimited lookahead.
//
//	go generate ./dsl
package main

import (
	"fmt"
	"os"
)

func main() {
	src, err := readers(".")
	if err == nil {
		err = os.WriteFile("reader.go", src, 0o666)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "readers:", err)
		os.Exit(1)
	}
}
