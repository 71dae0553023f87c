CREATE TABLE `load_case` (
	`booking_id` integer NOT NULL,
	`number` integer NOT NULL,
	`name` text NOT NULL,
	`crew` integer NOT NULL,
	PRIMARY KEY(`booking_id`, `number`),
	FOREIGN KEY (`booking_id`) REFERENCES `booking`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `load_piece` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`booking_id` integer NOT NULL,
	`case_number` integer NOT NULL,
	`unit_serial` text,
	`model_number` text NOT NULL,
	`count` integer DEFAULT 1 NOT NULL,
	`packed_at` text,
	`packed_by` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`booking_id`) REFERENCES `booking`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`unit_serial`) REFERENCES `unit`(`serial`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`model_number`) REFERENCES `model`(`number`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "load_piece_count" CHECK(count > 0)
);
--> statement-breakpoint
CREATE INDEX `load_piece_by_booking` ON `load_piece` (`booking_id`);--> statement-breakpoint
CREATE UNIQUE INDEX `load_piece_of_unit` ON `load_piece` (`booking_id`,`unit_serial`);--> statement-breakpoint
CREATE TABLE `pick_check` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`booking_id` integer NOT NULL,
	`kind` text NOT NULL,
	`subject` text NOT NULL,
	`serials_json` text NOT NULL,
	`passed` integer NOT NULL,
	`set_nm` real,
	`measured_nm` real,
	`instrument` text DEFAULT '' NOT NULL,
	`at` text NOT NULL,
	`who_id` text NOT NULL,
	`who` text NOT NULL,
	FOREIGN KEY (`booking_id`) REFERENCES `booking`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "pick_check_kind" CHECK(kind IN ('chain tried', 'function test'))
);
--> statement-breakpoint
CREATE INDEX `pick_check_by_booking` ON `pick_check` (`booking_id`);--> statement-breakpoint
CREATE TABLE `yard_scan` (
	`key` text PRIMARY KEY NOT NULL,
	`booking_id` integer NOT NULL,
	`asked_json` text NOT NULL,
	`answer_json` text NOT NULL,
	`at` text NOT NULL,
	`who_id` text NOT NULL,
	`who` text NOT NULL,
	FOREIGN KEY (`booking_id`) REFERENCES `booking`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `yard_scan_by_booking` ON `yard_scan` (`booking_id`);