/* What a test program asks of the board that it runs on. */

#ifndef BOARD_HEADER
#define BOARD_HEADER

#include <stddef.h>
#include <stdint.h>

/* Hand bytes to the host, and end with an exit code. */
void board_send(const char *bytes, unsigned count);
void board_stop(int code);

#ifdef __AVR__
#include <avr/io.h>
#include <avr/pgmspace.h>
#define BOARD_CONST PROGMEM const
#define BOARD_READ8(address) pgm_read_byte(address)
#define BOARD_READ16(address) pgm_read_word(address)
#define BOARD_READ32(address) pgm_read_dword(address)
#define BOARD_STACK() ((uintptr_t)SP + 1) /* SP is the next free byte */
#define BOARD_PAINT 1500u
#else
#define BOARD_CONST const
#define BOARD_READ8(address) (*(const uint8_t *)(address))
#define BOARD_READ16(address) (*(const uint16_t *)(address))
#define BOARD_READ32(address) (*(const uint32_t *)(address))
#define BOARD_STACK() board_stack()
#define BOARD_PAINT 4096u
static inline __attribute__((always_inline)) uintptr_t board_stack(void)
{
    uintptr_t at;
#ifdef __riscv
    __asm__ volatile("mv %0, sp" : "=r"(at));
#else
    __asm__ volatile("mov %0, sp" : "=r"(at));
#endif
    return at;
}
#endif

#endif
