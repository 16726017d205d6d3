//go:build linux && !race

package main

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"
)

// A press of as many pictures as a unit may have, into everything that press writes,
// stays within the memory that the README states.
func TestMemoryOfAPress(t *testing.T) {
	const stated = 700 << 20
	dir := folder(t, map[string]string{"1-a.md": lesson + "![a](p0.png) ![b](p1.png) ![c](p2.png)\n"})
	for _, name := range []string{"p0.png", "p1.png", "p2.png"} {
		if err := os.WriteFile(filepath.Join(dir, name), noise(20<<20), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	program, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	press := exec.Command(program, "press", "--staff", "--single", "--zip", "--content", dir, "--out", filepath.Join(t.TempDir(), "book"))
	press.Env = append(os.Environ(), beMain+"=1")
	if told, err := press.CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, told)
	}
	if most := press.ProcessState.SysUsage().(*syscall.Rusage).Maxrss << 10; most > stated {
		t.Errorf("it takes %d MB, and %d are stated", most>>20, stated>>20)
	}
}

// noise is a PNG of so many bytes that nothing packs: PNG 3rd edition, section 5.
func noise(size int) []byte {
	var out bytes.Buffer
	out.WriteString("\x89PNG\r\n\x1a\n")
	chunk := func(kind string, data []byte) {
		_ = binary.Write(&out, binary.BigEndian, uint32(len(data)))
		out.WriteString(kind)
		out.Write(data)
		_ = binary.Write(&out, binary.BigEndian, crc32.ChecksumIEEE(append([]byte(kind), data...)))
	}
	chunk("IHDR", []byte{0, 0, 0, 100, 0, 0, 0, 100, 8, 2, 0, 0, 0})
	data := make([]byte, size)
	chance := rand.New(rand.NewPCG(1, 2))
	for i := range data {
		data[i] = byte(chance.Uint32())
	}
	chunk("IDAT", data)
	chunk("IEND", nil)
	return out.Bytes()
}
