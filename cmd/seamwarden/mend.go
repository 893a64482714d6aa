package main

import (
	"bytes"
	"fmt"
	"io"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"seamwarden/compiler"
	"seamwarden/dsl/finding"
)

// mended is one change that was made: where, and what it does.
type mended struct {
	at    finding.Span
	title string
}

// mostRounds bounds how often a pattern is read again: a word that is mended can
// bring to light the next one.
const mostRounds = 10

// mend makes the changes that are certain, and gives what is found after them.
// Everything is tried out before a file is touched.
func (c *checked) mend() (*compiler.Result, error) {
	first, err := compile(c.dir, c.also...)
	if err != nil {
		return nil, err
	}
	r, texts := first, map[string]string{}
	for range mostRounds {
		next, made, left := mendedTexts(r)
		c.left = left
		if len(next) == 0 {
			break
		}
		tried := maps.Clone(texts)
		maps.Copy(tried, next)
		after, err := compileWith(c.dir, tried, c.also...)
		if err != nil || !better(after, r) {
			c.left = append(c.left, "the changes that seem certain would mend nothing, so none of them was made: "+titlesOf(made))
			break
		}
		r, texts = after, tried
		c.mended = append(c.mended, made...)
	}
	if len(texts) == 0 {
		return r, nil
	}
	if err := c.rewrite(first.Sources, texts); err != nil {
		c.mended = nil
		return first, err
	}
	return r, nil
}

// better reports whether changes have mended something: more can be read, or as
// much with fewer errors. What comes to light once more can be read was there
// before.
func better(after, before *compiler.Result) bool {
	if after.Unread != before.Unread {
		return after.Unread < before.Unread
	}
	return errorsIn(after) < errorsIn(before)
}

func titlesOf(list []mended) string {
	var all []string
	for _, m := range list {
		all = append(all, fmt.Sprintf("%s (line %d)", m.title, m.at.Start.Line))
	}
	return strings.Join(all, ", ")
}

func errorsIn(r *compiler.Result) (n int) {
	for _, f := range r.Findings {
		if f.Severity == finding.Error {
			n++
		}
	}
	return
}

// mendedTexts gives the new texts of the files in which every change is certain,
// what was changed in them, and why other files were left alone.
func mendedTexts(r *compiler.Result) (texts map[string]string, made []mended, left []string) {
	edits, doubts := map[string][]finding.Edit{}, map[string]finding.Span{}
	titles := map[string][]mended{}
	for _, f := range r.Findings {
		fixes := f.Fixes()
		for _, x := range fixes {
			sure := x.Certain && len(fixes) == 1
			for n, e := range x.Edits {
				name := e.Span.File
				if _, doubted := doubts[name]; !sure && !doubted {
					doubts[name] = e.Span
				}
				if !sure || slices.Contains(edits[name], e) {
					continue
				}
				edits[name] = append(edits[name], e)
				if n == 0 {
					titles[name] = append(titles[name], mended{e.Span, x.Title})
				}
			}
		}
	}
	texts = map[string]string{}
	for _, name := range slices.Sorted(maps.Keys(edits)) {
		if at, doubted := doubts[name]; doubted {
			left = append(left, fmt.Sprintf("%s was left alone: the change at line %d is not certain", name, at.Start.Line))
			continue
		}
		text, err := finding.Apply(r.Sources[name], edits[name])
		if err != nil {
			left = append(left, fmt.Sprintf("%s was left alone: %v", name, err))
			continue
		}
		texts[name] = text
		made = append(made, titles[name]...)
	}
	return texts, made, left
}

// rewrite puts new texts in place of files, each whole or not at all. A file that
// was changed meanwhile, or is write-protected, is not touched.
func (c *checked) rewrite(before, texts map[string]string) error {
	for _, name := range slices.Sorted(maps.Keys(texts)) {
		path, err := filepath.EvalSymlinks(filepath.Join(c.dir, filepath.FromSlash(name)))
		if err != nil {
			return fmt.Errorf("%s was not changed: %w", name, plain(err))
		}
		src, mode, err := readSource(path)
		switch {
		case err != nil:
			return fmt.Errorf("%s was not changed: %w", name, plain(err))
		case !bytes.Equal(src, []byte(before[name])):
			return fmt.Errorf("%s was not changed: something else has just changed it", name)
		case mode&0o200 == 0:
			return fmt.Errorf("%s is write-protected and was not changed", name)
		}
		root, err := os.OpenRoot(filepath.Dir(path))
		if err == nil {
			err = put(root, []file{{filepath.Base(path), []byte(texts[name]), mode}})
			root.Close()
		}
		if err != nil {
			return fmt.Errorf("%s was not changed: %w", name, plain(err))
		}
	}
	return nil
}

// tellMended says what was changed, and what was left alone.
func tellMended(w io.Writer, c *checked) {
	for _, m := range c.mended {
		fmt.Fprintf(w, "mended: %s %s\n", placeOf(folderOf(c.dir), m.at), finding.OneLine(m.title))
	}
	for _, why := range c.left {
		fmt.Fprintf(w, "not mended: %s\n", finding.OneLine(why))
	}
	if len(c.mended)+len(c.left) > 0 {
		fmt.Fprintln(w)
	}
}
