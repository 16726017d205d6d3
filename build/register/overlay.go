package register

import (
	"bytes"
	"io"
	"io/fs"
	"time"
)

// An overlay is a folder as it would be with one file in another's place, or with one
// that is not there yet.
type overlay struct {
	fs.FS
	name string
	src  []byte
}

func (o overlay) Open(name string) (fs.File, error) {
	if name == o.name {
		return &sheet{Reader: bytes.NewReader(o.src), of: o}, nil
	}
	return o.FS.Open(name)
}

// A sheet is the file of an overlay.
type sheet struct {
	*bytes.Reader
	of overlay
}

func (p *sheet) Stat() (fs.FileInfo, error) { return p, nil }
func (p *sheet) Close() error               { return nil }
func (p *sheet) Name() string               { return p.of.name }
func (p *sheet) Size() int64                { return int64(len(p.of.src)) }
func (p *sheet) Mode() fs.FileMode          { return 0o444 }
func (p *sheet) ModTime() time.Time         { return time.Time{} }
func (p *sheet) IsDir() bool                { return false }
func (p *sheet) Sys() any                   { return nil }

var _ io.Reader = (*sheet)(nil)

// nowhere is a folder that holds nothing.
type nowhere struct{}

func (nowhere) Open(name string) (fs.File, error) {
	return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
}
