package check

import (
	"embed"
	"io/fs"
	"strings"
)

// The examples of a rule stand in a folder of its name: failing.seam and
// passing.seam are the pattern.seam of each. A file failing-NAME lies beside
// the failing one as NAME, passing-NAME beside the passing one, and any other
// file beside both.
//
//go:embed examples
var examples embed.FS

const (
	failing = "failing"
	passing = "passing"
)

// FailingFiles gives the folder in which the rule finds something: the text of
// each file by its name.
func (r *Rule) FailingFiles() map[string]string { return exampleFiles(r.ID, failing, passing) }

// PassingFiles gives the same folder, mended.
func (r *Rule) PassingFiles() map[string]string { return exampleFiles(r.ID, passing, failing) }

func exampleFiles(id, which, not string) map[string]string {
	files := map[string]string{}
	entries, _ := fs.ReadDir(examples, "examples/"+id)
	for _, e := range entries {
		name := e.Name()
		switch {
		case name == which+".seam":
			name = "pattern.seam"
		case name == not+".seam", strings.HasPrefix(name, not+"-"):
			continue
		default:
			name = strings.TrimPrefix(name, which+"-")
		}
		b, _ := examples.ReadFile("examples/" + id + "/" + e.Name())
		files[name] = string(b)
	}
	return files
}
