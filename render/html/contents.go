package html

import (
	"html/template"

	"seamwarden/compiler/booklet"
)

// entry is a line of the contents list: a chapter, or a heading of the second
// level in it, with the steps and parts under it.
type entry struct {
	ID, Title string
	Steps     []stepEntry
	Parts     []entry
}

// stepEntry is the link to one step.
type stepEntry struct {
	ID, Title, Word string
	Number          int
}

// contents sets the contents list, or nothing if there are no chapters.
func (p *page) contents() (template.HTML, error) {
	if len(p.doc.Chapters) == 0 {
		return "", nil
	}
	var entries []entry
	for _, c := range p.doc.Chapters {
		e := entry{ID: c.ID, Title: c.Title}
		if err := p.outline(c.Blocks, &e); err != nil {
			return "", err
		}
		entries = append(entries, e)
	}
	return p.fill("contents", struct {
		TitleID, Title string
		Entries        []entry
	}{p.ids.fresh("contents"), p.doc.Labels.Contents, entries})
}

// outline adds the parts and steps among the blocks to a chapter's entry.
// Headings without an id cannot be linked to and are passed over.
func (p *page) outline(blocks []booklet.Block, chapter *entry) error {
	for _, b := range blocks {
		switch x := b.(type) {
		case *booklet.Heading:
			if x.Level == 2 && x.ID != "" {
				chapter.Parts = append(chapter.Parts, entry{ID: x.ID, Title: x.Title})
			}
			continue
		case *booklet.Step:
			chapter.addStep(stepEntry{x.ID, x.Title, p.doc.Labels.Step, x.Number})
			continue // what stands inside a step is found by way of the step
		}
		inner, err := children(b)
		if err != nil {
			return err
		}
		if err := p.outline(inner, chapter); err != nil {
			return err
		}
	}
	return nil
}

// addStep puts the step under the part that was opened last.
func (e *entry) addStep(s stepEntry) {
	if n := len(e.Parts); n > 0 {
		e = &e.Parts[n-1]
	}
	e.Steps = append(e.Steps, s)
}
