/*
 * A dial in the hand: counts the steps of an encoder with two lines, and tells them over a serial line.
 *
 * For a board with an ATmega328P at 16 MHz. Line A on PD2 (D2), line B on PD3 (D3), button from PD4 (D4) to ground; the chip
 * pulls all three up. The lines it writes are described in README.md; 115200 bits a second, 8 bits, no parity, 1 stop bit.
 */
#define F_CPU 16000000UL

#include <avr/eeprom.h>
#include <avr/interrupt.h>
#include <avr/io.h>
#include <avr/pgmspace.h>
#include <stdint.h>
#include <util/atomic.h>

/* Steps in one turn: four for each line of the encoder's disc. Change it to suit yours, and build again. */
#ifndef COUNTS_A_TURN
#define COUNTS_A_TURN 2400
#endif
#define VERSION 1

#define MOVING_EVERY_MS 8
#define RESTING_EVERY_MS 250
/* A contact closes once it has been closed for so long, and must have been open for so long before. */
#define PRESSED_AFTER_MS 3
#define OPEN_FOR_MS 20

#define LINE_A PD2
#define LINE_B PD3
#define BUTTON PD4

/* ---- Steps ------------------------------------------------------------------------------------------------------ */

#define BOTH 2
/* By the lines before (high two bits) and now (low two bits), A above B: one step up, down, none, or both lines at once. */
static const int8_t STEP[16] = {
    0,    -1, 1,    BOTH,
    1,    0,  BOTH, -1,
    -1,   BOTH, 0,  1,
    BOTH, 1,  -1,   0,
};

/* Steps since they were last fetched: two bytes, so that a step is counted in few cycles. */
static volatile int16_t fresh;
static volatile uint16_t missed;

static volatile uint8_t lines;

static inline __attribute__((always_inline)) uint8_t read_lines(void)
{
    uint8_t pins = PIND;
    return (uint8_t)((pins & _BV(LINE_A) ? 2 : 0) | (pins & _BV(LINE_B) ? 1 : 0));
}

ISR(INT0_vect)
{
    uint8_t now = read_lines();
    int8_t by = STEP[lines << 2 | now];
    lines = now;
    if (by != BOTH) fresh += by;
    else if (missed != UINT16_MAX) missed++;
}
ISR(INT1_vect, ISR_ALIASOF(INT0_vect));

/* ---- Time and button -------------------------------------------------------------------------------------------- */

static volatile uint32_t clock_ms;
static volatile uint8_t is_pressed;

static inline void watch_button(void)
{
    static uint8_t closed_for, open_for = OPEN_FOR_MS;
    if (PIND & _BV(BUTTON)) {
        closed_for = 0;
        if (open_for < OPEN_FOR_MS) open_for++;
    } else if (open_for < OPEN_FOR_MS) {
        /* It bounces, or is still down. */
        open_for = 0;
    } else if (++closed_for == PRESSED_AFTER_MS) {
        closed_for = 0;
        open_for = 0;
        is_pressed = 1;
    }
}

ISR(TIMER0_COMPA_vect)
{
    clock_ms++;
    watch_button();
}

/* ---- Writing ---------------------------------------------------------------------------------------------------- */

#define ROOM 128 /* a power of two */
#define LONGEST 80
static char waiting[ROOM];
static volatile uint8_t first, last;

ISR(USART_UDRE_vect)
{
    UDR0 = waiting[first];
    first = (first + 1) & (ROOM - 1);
    /* With the last character, not after it: else the interrupt comes once more with nothing to send. */
    if (first == last) UCSR0B &= (uint8_t)~_BV(UDRIE0);
}

static uint8_t room_left(void)
{
    return (uint8_t)(ROOM - 1 - ((last - first) & (ROOM - 1)));
}

static uint32_t checksum;

static void put(char c)
{
    waiting[last] = c;
    last = (last + 1) & (ROOM - 1);
    UCSR0B |= _BV(UDRIE0);
}

/* CRC-32 as in gzip, a bit at a time. */
static void put_checked(char c)
{
    checksum ^= (uint8_t)c;
    for (uint8_t bit = 0; bit < 8; bit++) {
        uint8_t is_odd = (uint8_t)checksum & 1;
        checksum >>= 1;
        if (is_odd) checksum ^= 0xEDB88320UL;
    }
    put(c);
}

static void put_number(uint32_t size, uint8_t is_negative)
{
    /* Not on the stack: moving its pointer, in two halves, is the one thing that an interrupt must not meet. */
    static char digits[10];
    uint8_t n = 0;
    do {
        digits[n++] = (char)('0' + size % 10);
        size /= 10;
    } while (size != 0);
    put_checked(' ');
    if (is_negative) put_checked('-');
    while (n > 0) put_checked(digits[--n]);
}

static uint16_t seq;
static uint8_t start;

static void begin_line(char type, int32_t at_count, uint32_t at_ms, uint16_t with_missed)
{
    uint8_t is_right = at_count < 0;
    checksum = UINT32_MAX;
    put_checked(type);
    put_number(seq++, 0);
    put_number(is_right ? 0UL - (uint32_t)at_count : (uint32_t)at_count, is_right);
    put_number(at_ms, 0);
    put_number(start, 0);
    put_number(with_missed, 0);
}

static void end_line(void)
{
    static const char HEX[] = "0123456789abcdef";
    uint32_t sum = ~checksum;
    put('*');
    for (int8_t shift = 28; shift >= 0; shift -= 4) put(HEX[(uint8_t)(sum >> shift) & 15]);
    put('\n');
}

/* ---- All together ----------------------------------------------------------------------------------------------- */

/* Every start has its own number, so that steps of two starts are never taken for one. */
static void number_this_start(void)
{
    static uint8_t EEMEM kept_start;
    start = (uint8_t)(eeprom_read_byte(&kept_start) + 1);
    eeprom_write_byte(&kept_start, start);
}

static void set_up(void)
{
    PORTD = _BV(LINE_A) | _BV(LINE_B) | _BV(BUTTON);
    /* Any edge of either line. */
    EICRA = _BV(ISC00) | _BV(ISC10);
    /* A tick a millisecond: 16 MHz / 64 / 250. */
    TCCR0A = _BV(WGM01);
    OCR0A = 249;
    TCCR0B = _BV(CS01) | _BV(CS00);
    TIMSK0 = _BV(OCIE0A);
    /* 115200 with the double rate: 16 MHz / 8 / 17 is 2.1 % above it, which is within what a receiver takes. */
    UCSR0A = _BV(U2X0);
    UBRR0 = 16;
    UCSR0C = _BV(UCSZ01) | _BV(UCSZ00);
    UCSR0B = _BV(RXEN0) | _BV(TXEN0);
    number_this_start();
    lines = read_lines();
    EIFR = _BV(INTF0) | _BV(INTF1);
    EIMSK = _BV(INT0) | _BV(INT1);
    sei();
}

static uint8_t is_asked(void)
{
    uint8_t asked = 0;
    while (UCSR0A & _BV(RXC0)) asked |= UDR0 == '?';
    return asked;
}

int main(void)
{
    int32_t count = 0, told_count = 0;
    uint16_t told_missed = 0;
    uint32_t told_ms = 0;
    uint8_t owes_hello = 1, owes_press = 0;

    set_up();
    for (;;) {
        uint16_t now_missed;
        uint32_t now_ms;

        owes_hello |= is_asked();
        /* A line is written whole or not at all. What it would have said, the next one says. */
        if (room_left() < LONGEST) continue;
        ATOMIC_BLOCK(ATOMIC_FORCEON)
        {
            count += fresh;
            fresh = 0;
            now_missed = missed;
            now_ms = clock_ms;
            owes_press |= is_pressed;
            is_pressed = 0;
        }
        if (owes_hello) {
            owes_hello = 0;
            begin_line('h', count, now_ms, now_missed);
            put_number(COUNTS_A_TURN, 0);
            put_number(VERSION, 0);
        } else if (owes_press) {
            owes_press = 0;
            begin_line('b', count, now_ms, now_missed);
        } else {
            uint8_t has_news = count != told_count || now_missed != told_missed;
            if (now_ms - told_ms < (has_news ? MOVING_EVERY_MS : RESTING_EVERY_MS)) continue;
            begin_line('p', count, now_ms, now_missed);
        }
        end_line();
        told_count = count;
        told_missed = now_missed;
        told_ms = now_ms;
    }
}
