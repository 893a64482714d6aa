package compiler

import (
	"slices"

	"seamwarden/compiler/check"
	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

// accept takes out of the findings what remarks in the source accept, and adds
// what is wrong with the remarks. What could not be read stands whatever a remark
// says, since the checks would else judge a pattern that its author did not write:
// read holds what was found before the rules ran, judged what they found.
func (r *Result) accept(read, judged []finding.Finding, complete bool, also []string) {
	var remarks []finding.Acceptance
	for _, f := range r.Files {
		for _, a := range dsl.Acceptances(f) {
			if rule := check.Find(a.Rule); rule == nil || !rule.Asked || slices.Contains(also, a.Rule) {
				remarks = append(remarks, a) // what was not asked for cannot be found, nor accepted
			}
		}
	}
	if len(remarks) == 0 {
		r.Findings = append(read, judged...)
		return
	}
	var open []finding.Finding
	for _, f := range read {
		if f.Severity == finding.Error {
			open = append(open, f)
		} else {
			judged = append(judged, f)
		}
	}
	kept, accepted, more := finding.Accept(judged, remarks, acceptable(), complete)
	r.Findings, r.Accepted = append(append(open, kept...), more...), accepted
}

// acceptable lists the names that a remark can accept: not those of findings about
// remarks, nor of what is only listed as not checked.
func acceptable() (names []string) {
	for _, r := range check.Rules() {
		if r.Category != "remarks" && r.Severity != finding.Unchecked {
			names = append(names, r.ID)
		}
	}
	return
}
