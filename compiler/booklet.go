package compiler

import (
	"seamwarden/compiler/booklet"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/compiler/wording"
)

// Booklet words a pattern for the garments of a choice; the empty assignment is
// all of them.
func Booklet(p *model.Pattern, chosen condition.Assignment) (*booklet.Booklet, error) {
	return wording.Booklet(p, chosen)
}
