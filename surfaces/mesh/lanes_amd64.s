#include "textflag.h"

// Offsets in a lanes.
#define ORIGIN 0
#define AREA 96
#define AREA_LOST 128
#define VOLUME 160
#define VOLUME_LOST 192
#define VECTOR 224
#define ZERO 320
#define LOW 352
#define HIGH 400

// ROWS loads four floats at an offset in each of four records.
#define ROWS(at) \
	VMOVUPS at(SI), X0; \
	VMOVUPS (at+50)(SI), X1; \
	VMOVUPS (at+100)(SI), X2; \
	VMOVUPS (at+150)(SI), X3

// PAIRS begins to turn rows into columns: X4 and X5 hold columns 0 and 1 of
// records 0, 1 and 2, 3; X6 and X7 hold columns 2 and 3.
#define PAIRS \
	VUNPCKLPS X1, X0, X4; \
	VUNPCKLPS X3, X2, X5; \
	VUNPCKHPS X1, X0, X6; \
	VUNPCKHPS X3, X2, X7

// WIDEN takes coordinate k of three corners into the box.
#define WIDEN(a, b, c, k) \
	VMINPS a, b, X3; \
	VMAXPS a, b, X4; \
	VMINPS c, X3, X3; \
	VMAXPS c, X4, X4; \
	VMINPS (LOW+16*k)(DI), X3, X3; \
	VMAXPS (HIGH+16*k)(DI), X4, X4; \
	VMOVUPS X3, (LOW+16*k)(DI); \
	VMOVUPS X4, (HIGH+16*k)(DI)

// ADD adds value to a total and what that rounds away to lost (Knuth's two-sum).
// It uses Y3, Y4, Y5 and Y7.
#define ADD(value, total, lost) \
	VMOVUPD total(DI), Y3; \
	VADDPD value, Y3, Y4; \
	VSUBPD Y3, Y4, Y5; \
	VSUBPD Y5, Y4, Y7; \
	VSUBPD Y7, Y3, Y3; \
	VSUBPD Y5, value, Y7; \
	VADDPD Y7, Y3, Y3; \
	VADDPD lost(DI), Y3, Y3; \
	VMOVUPD Y3, lost(DI); \
	VMOVUPD Y4, total(DI)

// func addQuads(data *byte, quads int, l *lanes)
TEXT ·addQuads(SB), NOSPLIT, $0-24
	MOVQ data+0(FP), SI
	MOVQ quads+8(FP), CX
	MOVQ l+16(FP), DI

next:
	// Corner a in X8 to X10, b in X11 to X13, c in X0 to X2: x, y and z of four
	// records each. No load reaches beyond its record.
	ROWS(12) // ax ay az bx
	PAIRS
	VMOVLHPS X5, X4, X8
	VMOVHLPS X4, X5, X9
	VMOVLHPS X7, X6, X10
	ROWS(24) // bx by bz cx
	PAIRS
	VMOVLHPS X5, X4, X11
	VMOVHLPS X4, X5, X12
	VMOVLHPS X7, X6, X13
	ROWS(32) // bz cx cy cz
	PAIRS
	VMOVHLPS X4, X5, X0
	VMOVLHPS X7, X6, X1
	VMOVHLPS X6, X7, X2

	WIDEN(X8, X11, X0, 0)
	WIDEN(X9, X12, X1, 1)
	WIDEN(X10, X13, X2, 2)

	// a in Y8 to Y10, u = b−a in Y11 to Y13, v = c−a in Y0 to Y2.
	VCVTPS2PD X8, Y8
	VCVTPS2PD X9, Y9
	VCVTPS2PD X10, Y10
	VCVTPS2PD X11, Y11
	VCVTPS2PD X12, Y12
	VCVTPS2PD X13, Y13
	VCVTPS2PD X0, Y0
	VCVTPS2PD X1, Y1
	VCVTPS2PD X2, Y2
	VSUBPD Y8, Y11, Y11
	VSUBPD Y9, Y12, Y12
	VSUBPD Y10, Y13, Y13
	VSUBPD Y8, Y0, Y0
	VSUBPD Y9, Y1, Y1
	VSUBPD Y10, Y2, Y2

	// n = u×v in Y3 to Y5, |n| in Y6.
	VMULPD Y2, Y12, Y3
	VMULPD Y1, Y13, Y4
	VSUBPD Y4, Y3, Y3
	VMULPD Y0, Y13, Y4
	VMULPD Y2, Y11, Y5
	VSUBPD Y5, Y4, Y4
	VMULPD Y1, Y11, Y5
	VMULPD Y0, Y12, Y6
	VSUBPD Y6, Y5, Y5
	VMULPD Y3, Y3, Y6
	VMULPD Y4, Y4, Y7
	VADDPD Y7, Y6, Y6
	VMULPD Y5, Y5, Y7
	VADDPD Y7, Y6, Y6
	VSQRTPD Y6, Y6

	// (a−origin)·n in Y8.
	VSUBPD (ORIGIN+0)(DI), Y8, Y8
	VSUBPD (ORIGIN+32)(DI), Y9, Y9
	VSUBPD (ORIGIN+64)(DI), Y10, Y10
	VMULPD Y3, Y8, Y8
	VMULPD Y4, Y9, Y9
	VMULPD Y5, Y10, Y10
	VADDPD Y9, Y8, Y8
	VADDPD Y10, Y8, Y8

	VADDPD (VECTOR+0)(DI), Y3, Y3
	VADDPD (VECTOR+32)(DI), Y4, Y4
	VADDPD (VECTOR+64)(DI), Y5, Y5
	VMOVUPD Y3, (VECTOR+0)(DI)
	VMOVUPD Y4, (VECTOR+32)(DI)
	VMOVUPD Y5, (VECTOR+64)(DI)

	// A facet without area adds −(−1).
	VXORPD Y7, Y7, Y7
	VCMPPD $0, Y7, Y6, Y7
	VMOVDQU ZERO(DI), Y3
	VPSUBQ Y7, Y3, Y3
	VMOVDQU Y3, ZERO(DI)

	ADD(Y6, AREA, AREA_LOST)
	ADD(Y8, VOLUME, VOLUME_LOST)

	ADDQ $200, SI
	DECQ CX
	JNZ next
	VZEROUPPER
	RET
