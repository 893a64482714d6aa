package check

import (
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/size"
	"seamwarden/dsl/finding"
)

// The table of lengths by view.
func init() {
	register(Rule{ID: "length-not-told", Severity: finding.Warning, Category: "sizes", FromAbsence: true, run: lengthNotTold,
		Purpose: "The finished length is told for some garments only.",
		Why:     "Views mostly differ in length; whoever chooses between them looks for it."})
}

// lengthNotTold looks at finished rows whose words speak of a length.
func lengthNotTold(r *run) {
	if r.Sizes == nil {
		return
	}
	told := condition.False
	var first *size.Row
	for i := range r.Sizes.Finished {
		row := &r.Sizes.Finished[i]
		if !strings.Contains(lower(row.Key+" "+row.Name), "length") {
			continue
		}
		told = r.Space.Or(told, r.RowCond(row))
		if first == nil {
			first = row
		}
	}
	if first != nil {
		r.report(r.Space.Not(told), at(first.KeySpan, "for some garments only", "The finished length is told for some garments and not for the others.", "Add a row with the length of these too."))
	}
}
