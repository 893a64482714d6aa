package main

import (
	"io/fs"
	"strings"
	"time"
)

// overlay is a folder in which some files have other texts, that are not on the
// disk.
type overlay struct {
	fs.FS
	texts map[string]string
}

// Open opens a file with its new text, or as it is.
func (o overlay) Open(name string) (fs.File, error) {
	if text, ok := o.texts[name]; ok {
		return &textFile{Reader: strings.NewReader(text), name: name}, nil
	}
	return o.FS.Open(name)
}

// textFile is a file whose text is in memory. It is its own description.
type textFile struct {
	*strings.Reader
	name string
}

func (f *textFile) Stat() (fs.FileInfo, error) { return f, nil }
func (f *textFile) Close() error               { return nil }
func (f *textFile) Name() string               { return f.name }
func (f *textFile) Mode() fs.FileMode          { return 0o444 }
func (f *textFile) ModTime() time.Time         { return time.Time{} }
func (f *textFile) IsDir() bool                { return false }
func (f *textFile) Sys() any                   { return nil }
