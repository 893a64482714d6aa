package html

import (
	"errors"
	"fmt"

	"seamwarden/compiler/booklet"
)

// checkWords refuses a booklet that lacks a word the page cannot do without: a
// heading or a control with no words is lost on whoever listens to the page.
func checkWords(b *booklet.Booklet) error {
	if b.Title == "" {
		return errors.New("the booklet has no title")
	}
	type need struct {
		word, what string
		wanted     bool
	}
	chapters := len(b.Chapters) > 0
	for _, n := range []need{
		{b.Labels.Contents, "the contents list", chapters},
		{b.Labels.BackToTop, "the way back to the top", chapters},
		{b.Labels.Step, "a step", chapters},
		{b.Labels.Figure, "a figure", chapters || len(b.Cover.Views) > 0},
		{b.Labels.Views, "the views on the cover", len(b.Cover.Views) > 0},
		{b.Labels.Edition, "the edition", b.Edition != ""},
	} {
		if n.wanted && n.word == "" {
			return fmt.Errorf("the booklet has no word for %s", n.what)
		}
	}
	for i, c := range b.Chapters {
		if c.Title == "" || c.ID == "" {
			return fmt.Errorf("chapter %d has no title or no id", i+1)
		}
	}
	return nil
}
