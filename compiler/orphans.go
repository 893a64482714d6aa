package compiler

import (
	"io/fs"
	"path"
	"sort"
	"strings"

	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

// orphans finds drawings and sources that lie beside those that the pattern uses
// and that nothing uses. Only folders are looked into from which the pattern shows
// a figure or includes a file, and of these only what lies right in them: other
// folders may belong to somebody else. A file that begins a pattern of its own is
// not meant to be included.
func (r *reader) orphans() (all []finding.Finding) {
	var unshown, left []string
	drawings, sources := map[string]bool{}, map[string]bool{}
	for name := range r.shown {
		drawings[path.Dir(name)] = true
	}
	for name := range r.seen {
		if name != Root {
			sources[path.Dir(name)] = true
		}
	}
	for _, dir := range sorted(drawings) {
		for _, name := range r.beside(dir) {
			if isDrawing(name) && !r.shown[name] && !r.traced[name] {
				unshown = append(unshown, name)
			}
		}
	}
	for _, dir := range sorted(sources) {
		for _, name := range r.beside(dir) {
			if strings.HasSuffix(name, ".seam") && r.seen[name] == nil && !r.ownPattern(name) {
				left = append(left, name)
			}
		}
	}
	head := r.result.Pattern.TitleSpan
	if len(unshown) > 0 {
		all = append(all, neverShown(head, unshown))
	}
	if len(left) > 0 {
		all = append(all, neverIncluded(head, left))
	}
	return all
}

// beside lists the plain files of a folder by their names from the pattern's.
// Hidden files are left out. A folder that cannot be listed holds nothing.
func (r *reader) beside(dir string) (names []string) {
	entries, err := fs.ReadDir(r.folder, dir)
	if err != nil {
		return nil
	}
	for _, e := range entries {
		if e.Type().IsRegular() && !strings.HasPrefix(e.Name(), ".") {
			names = append(names, path.Join(dir, e.Name()))
		}
	}
	return
}

// ownPattern reports whether a file is the beginning of a pattern, or cannot be
// read.
func (r *reader) ownPattern(name string) bool {
	src, err := r.read(name)
	if err != nil {
		return true
	}
	for _, s := range dsl.Parse(name, src).Sentences {
		if s.First() == "pattern" {
			return true
		}
	}
	return path.Base(name) == Root
}

func sorted(set map[string]bool) (all []string) {
	for x := range set {
		all = append(all, x)
	}
	sort.Strings(all)
	return
}

// clean reports whether nothing was found that counts, but advice. What nothing
// uses is often what a mistake has left behind, and then one finding is enough.
func clean(list []finding.Finding) bool {
	for _, f := range list {
		if f.Severity == finding.Error || f.Severity == finding.Warning {
			return false
		}
	}
	return true
}
