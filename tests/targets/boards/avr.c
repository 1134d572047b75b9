/* An AVR whose serial line the simulator writes out; it ends by sleeping with its interrupts off. */

#include "board.h"
#include <avr/interrupt.h>
#include <avr/sleep.h>

void board_send(const char *bytes, unsigned count)
{
    UCSR0A = 1 << U2X0;
    UBRR0 = 0;
    UCSR0B = 1 << TXEN0;
    while (count--) {
        while (!(UCSR0A & (1 << UDRE0))) {
        }
        UDR0 = (uint8_t)*bytes++;
    }
}

void board_stop(int code)
{
    char last[] = "e00\n";

    last[1] = (char)('0' + code / 10);
    last[2] = (char)('0' + code % 10);
    board_send(last, 4);
    for (;;) {
        cli();
        sleep_mode();
    }
}
