package size

import (
	"regexp"
	"sync"
)

// lazily makes an expression when it is first asked for: most runs need few of
// them, and making them all takes longer than reading a table.
func lazily(expression string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(expression) })
}
