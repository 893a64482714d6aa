package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"

	"seamwarden/compiler"
	"seamwarden/dsl/finding"
)

// plainFiles is a folder from which only plain files can be opened. A pipe or a
// device would keep the reader waiting, or never end.
type plainFiles struct{ root *os.Root }

var (
	errNotPlain = errors.New("it is not a plain file")
	errLeadsOut = errors.New("it is a link that escapes from the folder")
)

// Open opens a plain file or a folder. It does not wait for the other end of a
// pipe, and lets go of whatever else it finds.
func (p plainFiles) Open(name string) (fs.File, error) {
	f, err := p.root.OpenFile(filepath.FromSlash(name), os.O_RDONLY|syscall.O_NONBLOCK, 0)
	if err == nil {
		st, e := f.Stat()
		if e == nil && (st.Mode().IsRegular() || st.IsDir()) {
			return f, nil
		}
		f.Close()
		err = errors.Join(e, errNotPlain)
	} else if strings.Contains(err.Error(), "escapes from parent") { // the library does not export this error
		err = errLeadsOut
	}
	return nil, &fs.PathError{Op: "open", Path: name, Err: err}
}

// openFolder gives the files of a folder. A link that leads out of it is refused
// when it is followed.
func openFolder(dir string) (*os.Root, error) {
	st, err := os.Stat(dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, meant(fmt.Sprintf("there is no folder %s", dir), nearestPath(dir))
	case err != nil:
		return nil, fmt.Errorf("the folder %s cannot be opened: %w", dir, plain(err))
	case !st.IsDir() && filepath.Base(dir) == compiler.Root:
		return nil, fmt.Errorf("%s is a file; name the folder that it is in: %s", dir, filepath.Dir(dir))
	case !st.IsDir():
		return nil, fmt.Errorf("%s is a file, not a pattern's folder", dir)
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return nil, fmt.Errorf("the folder %s cannot be opened: %w", dir, plain(err))
	}
	return root, nil
}

// compile reads and checks the pattern in a folder.
func compile(dir string, also ...string) (*compiler.Result, error) {
	return compileWith(dir, nil, also...)
}

// compileWith reads and checks the pattern in a folder, with other texts in place
// of some of its files. also names rules that run only when they are asked for.
func compileWith(dir string, texts map[string]string, also ...string) (*compiler.Result, error) {
	root, err := openFolder(dir)
	if err != nil {
		return nil, err
	}
	defer root.Close()
	r, err := compiler.Compile(overlay{plainFiles{root}, texts}, also...)
	switch {
	case errors.Is(err, compiler.ErrNoPattern):
		return nil, noPattern(dir)
	case err != nil:
		return nil, fmt.Errorf("the pattern in %s cannot be read: %w", label(dir), err)
	}
	return r, nil
}

// noPattern says that a folder is no pattern, and where there is one.
func noPattern(dir string) error {
	inside := patternsIn(dir)
	inside = inside[:min(len(inside), 3)]
	sentence := fmt.Sprintf("%s is no pattern: it has no file %s", label(dir), compiler.Root)
	if len(inside) == 0 {
		return fmt.Errorf("%s; seamwarden init NAME begins one", sentence)
	}
	return meant(sentence, spoken(inside, "or"))
}

// isPattern reports whether a path is a pattern's folder.
func isPattern(dir string) bool {
	st, err := os.Stat(filepath.Join(dir, compiler.Root))
	return err == nil && st.Mode().IsRegular()
}

// nearestPath guesses which path was meant by one that is not there.
func nearestPath(path string) string {
	parent := filepath.Dir(path)
	entries, err := os.ReadDir(parent)
	if err != nil {
		return ""
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	if name := finding.Nearest(filepath.Base(path), names); name != "" {
		return filepath.Join(parent, name)
	}
	return ""
}

// label is a folder's name in a sentence.
func label(dir string) string {
	if dir == "." {
		return "this folder"
	}
	return dir
}

// plain takes the names of system calls out of an error.
func plain(err error) error {
	var pe *fs.PathError
	var le *os.LinkError
	switch {
	case errors.Is(err, fs.ErrPermission):
		return errors.New("you have no permission for it")
	case errors.Is(err, syscall.ENOTDIR):
		return errors.New("a file stands where a folder is meant")
	case errors.Is(err, fs.ErrNotExist):
		return errors.New("there is no such file or folder")
	case errors.As(err, &pe):
		return pe.Err
	case errors.As(err, &le):
		return le.Err
	}
	return err
}
