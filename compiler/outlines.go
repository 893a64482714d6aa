package compiler

import (
	"fmt"

	"seamwarden/compiler/model"
	"seamwarden/compiler/outline"
	"seamwarden/dsl/finding"
)

// outlines puts the drawings of pieces into the model, and gives what is wrong with
// them, once for each file.
func (r *reader) outlines(p *model.Pattern) (found []finding.Finding) {
	for _, piece := range p.Pieces {
		for _, d := range piece.Outlines {
			name, ok := r.inside(d.File.Text, d.File.Span, Root)
			if !ok {
				continue
			}
			if !outline.Readable(name) {
				r.report(notOutline(d.File.Span, name))
				continue
			}
			file := r.shape(name).wait()
			if file.err != nil {
				r.report(cannotOpen(d.File.Span, name, "outline", file.err))
				continue
			}
			r.result.Sources[name] = string(file.src)
			if !r.traced[name] {
				found = append(found, file.found...)
			}
			r.traced[name] = true
			if file.drawing == nil {
				continue
			}
			if d.Art = file.drawing.Piece(piece.ID, piece.Name, fmt.Sprint(piece.Number)); d.Art == nil {
				found = append(found, notInFile(d.File.Span, name, piece.Name))
			}
		}
	}
	return found
}

func notOutline(at finding.Span, name string) finding.Finding {
	return finding.Finding{Rule: outline.RuleUnreadable, Severity: finding.Error, Place: finding.Place{Span: at, Label: "neither"},
		Headline: fmt.Sprintf("The outline %q is neither an SVG nor a DXF file.", name), Help: "Save the drawing as .svg or .dxf."}
}

func notInFile(at finding.Span, name, piece string) finding.Finding {
	return finding.Finding{Rule: outline.RuleName, Severity: finding.Error, Place: finding.Place{Span: at, Label: "not in this file"},
		Headline: fmt.Sprintf("There is no piece called %s in %s.", piece, name),
		Help:     "Call the block, or its text “Piece Name: …”, by the name, the words or the number of the piece."}
}
