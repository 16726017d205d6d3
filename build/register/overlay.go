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
		return &paper{Reader: bytes.NewReader(o.src), of: o}, nil
	}
	return o.FS.Open(name)
}

// A paper is the file of an overlay.
type paper struct {
	*bytes.Reader
	of overlay
}

func (p *paper) Stat() (fs.FileInfo, error) { return p, nil }
func (p *paper) Close() error               { return nil }
func (p *paper) Name() string               { return p.of.name }
func (p *paper) Size() int64                { return int64(len(p.of.src)) }
func (p *paper) Mode() fs.FileMode          { return 0o444 }
func (p *paper) ModTime() time.Time         { return time.Time{} }
func (p *paper) IsDir() bool                { return false }
func (p *paper) Sys() any                   { return nil }

var _ io.Reader = (*paper)(nil)

// nowhere is a folder that holds nothing.
type nowhere struct{}

func (nowhere) Open(name string) (fs.File, error) {
	return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
}
