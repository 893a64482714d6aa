package compiler_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"seamwarden/compiler"
	"seamwarden/dsl/finding"
)

// edits gives what would be changed in a pattern: "old → new".
func edits(t *testing.T, source string) string {
	t.Helper()
	r, err := compiler.Compile(fstest.MapFS{compiler.Root: {Data: []byte(source)}})
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, f := range r.Findings {
		for _, e := range f.Edits {
			if e.Certain {
				all = append(all, source[e.Span.Start.Offset:e.Span.End.Offset]+" → "+e.New)
			}
		}
		if _, err := finding.Apply(source, f.Edits); err != nil {
			t.Error(err)
		}
	}
	return strings.Join(all, ", ")
}

// A misspelt name has an edit where it can only mean one thing of a kind that fits.
func TestMisspeltNames(t *testing.T) {
	const head = `pattern "Cloth" { allow 1cm }
view A "One"
view B "Two"
option pockets "Pockets"
choice band "Band" { turned "turned", bound "bound" }
fabric main "Main fabric" { widths 110cm }
interfacing fuse "Fuse" fusible { widths 90cm }
piece front 1 "Front" { edges rim, rest; cut 1 main right side up }
piece back 2 "Back" { symmetric; edges rim, rest, fold; marks dot on rest; cut 1 main on fold fold }
seam rims joins front.rim to back.rim
notion rimx 1 "Pins"
`
	for _, c := range []struct{ source, want string }{
		{`step a "A" { sew rimz }`, "rimz → rims"}, // a notion is not sewn
		{`step a "A" { hem frnt.rim turning 1cm }`, "frnt → front"},
		{`step a "A" { hem front.rst turning 1cm }`, "rst → rest"},
		{`step a "A" { hem front . rst turning 1cm }`, ""}, // not letter for letter
		{`step a "A" { press rims toward bck }`, ""},       // marks of what is named may be meant as well
		{`step a "A" { sew rimz when poccets }`, "rimz → rims, poccets → pockets"},
		{`step a "A" { sew rims when band is bund }`, "bund → bound"},
		{`step a "A" { sew rims when C }`, ""},
		{`piece tab 3 "Tab" { edges one, two; cut 1 mian }`, "mian → main"},
		{`piece tab 3 "Tab" { edges one, two; cut 1 main on fold ome }`, "ome → one"},
		{`step a "A" { sew rimz }
step b "B" { press rimz open }`, ""}, // used twice: is the declaration misspelt?
		{`piece fronts 3 Fronts
step a "A" { hem frons.rim turning 1cm }`, ""}, // a name that could not be read is near as well
		{`piece sleeve 3 Sleeve
step a "A" { hem sleve.rim turning 1cm }`, ""}, // and it is not known what it names
		{`piece tab 3 "Tab" { edges one, two, three; cut 1 main right side up; cut 1 fuse glue side down }`, "down → up"},
		{`piece tab 3 "Tab" { edges one, two, three; cut 1 main wrong side up; cut 1 fuse glue side up }`, "up → down"},
		{`piece tab 3 "Tab" { edges one, two, three; cut 2 main mirrored; cut 2 fuse glue side up }`, ""},
		{`piece tab 3 "Tab" { edges one, two, three; cut 2 main right side up; cut 1 fuse glue side down }`, ""},
	} {
		if got := edits(t, head+c.source); got != c.want {
			t.Errorf("%s: %q, want %q", c.source, got, c.want)
		}
	}
}

// Remarks about findings cannot be accepted, nor what is only not checked.
func TestWhatCannotBeAccepted(t *testing.T) {
	for rule, known := range map[string]bool{"acceptance-unused": false, "not-checked": false, "piece-never-used": true} {
		r, err := compiler.Compile(fstest.MapFS{compiler.Root: {Data: []byte("// accept " + rule + ": it is so\npattern \"Cloth\" { allow 1cm }\n")}})
		if err != nil {
			t.Fatal(err)
		}
		unknown := false
		for _, f := range r.Findings {
			unknown = unknown || f.Rule == finding.AcceptanceUnknown
		}
		if unknown == known {
			t.Errorf("%s: known is %v, want %v", rule, !unknown, known)
		}
	}
}
